using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>Reads what a decision rests on, and whether that is still so.</summary>
internal static class GroundReader
{
    /// <summary>Analyses the open cases of a horse as they stand now and asks the rules.</summary>
    public static async Task<DecisionGround> ReadAsync(
        RecordsSession session,
        Guid horseId,
        AskedStep asked,
        Visit visit,
        CancellationToken cancellation
    )
    {
        AnalysisSettings settings = SettingsStore.Of(session.Practice);
        List<CaseRecord> open = await ExerciseRows
            .OpenCases(session.Records)
            .AsNoTracking()
            .Where(injury => injury.HorseId == horseId)
            .OrderBy(injury => injury.Id)
            .ToListAsync(cancellation);
        List<CaseGround> cases = [];
        foreach (CaseRecord injury in open)
        {
            (CaseCourse course, IReadOnlyList<LinkConstraint> words) = await CaseRows.StandingAsync(
                session.Records,
                injury,
                session.Today,
                cancellation
            );
            CaseAnalysis analysis = CaseAnalyser.Analyse(course, words, settings, session.Today);
            Suggestion suggestion = CaseAnalyser.Suggest(course, analysis, asked, visit.ForRules);
            cases.Add(
                new CaseGround
                {
                    CaseId = injury.Id,
                    EngineVersion = analysis.EngineVersion,
                    AsOf = session.Today,
                    Verdict = analysis.Trend.Verdict,
                    RatePercentPer60Days = analysis.Trend.Window?.RatePercent is { } rate && double.IsFinite(rate) ? rate : null,
                    Suggested = suggestion.Move,
                    Rules = [.. suggestion.Hits.Select(hit => hit.Rule.Code)],
                    Examinations =
                    [
                        .. course
                            .Examinations.Where(examination => examination.Date <= session.Today)
                            .Select(examination => Guid.Parse(examination.Id)),
                    ],
                    InputHash = InputHash.Of(course, words, settings, session.Today),
                }
            );
        }

        return new DecisionGround
        {
            Visit = visit,
            Asked = asked,
            Suggested = cases.Count == 0 ? null : cases.Max(ground => ground.Suggested),
            Cases = cases,
        };
    }

    /// <summary>
    /// Whether what a decision rested on has changed: the same examinations, their links or the settings say something else today.
    /// Examinations that came later change nothing of it.
    /// </summary>
    public static bool HasChanged(CaseGround ground, CaseCourse course, IReadOnlyList<LinkConstraint> words, AnalysisSettings settings)
    {
        HashSet<string> read = [.. ground.Examinations.Select(RecordText.Of)];
        CaseCourse then = course with { Examinations = [.. course.Examinations.Where(examination => read.Contains(examination.Id))] };
        LinkConstraint[] said =
        [
            .. words.Where(word => read.Contains(word.First.ExaminationId) && read.Contains(word.Second.ExaminationId)),
        ];
        return InputHash.Of(then, said, settings, ground.AsOf) != ground.InputHash;
    }
}
