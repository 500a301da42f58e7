using System.Runtime.CompilerServices;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
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
        List<CaseGround> cases = [];
        await foreach (
            (CaseRecord injury, CaseCourse course, IReadOnlyList<LinkConstraint> words) in OpenAsync(session, horseId, cancellation)
        )
        {
            CaseAnalysis analysis = CaseAnalyser.Analyse(course, words, settings, session.Today);
            Suggestion suggestion = CaseAnalyser.Suggest(course, analysis, asked, visit.ForRules);
            SeenFigures figures = SeenFigures.Of(course, words, analysis);
            cases.Add(
                new CaseGround
                {
                    CaseId = injury.Id,
                    EngineVersion = analysis.EngineVersion,
                    AsOf = session.Today,
                    Verdict = analysis.Trend.Verdict,
                    RatePercentPer60Days = figures.RatePercentPer60Days,
                    Suggested = suggestion.Move,
                    Rules = [.. suggestion.Hits.Select(hit => hit.Rule.Code)],
                    Examinations =
                    [
                        .. course
                            .Examinations.Where(examination => examination.Date <= session.Today)
                            .Select(examination => Guid.Parse(examination.Id)),
                    ],
                    InputHash = figures.InputHash,
                    Figures = figures,
                    Hits = [.. suggestion.Hits.Select(Finite)],
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

    // A figure that cannot be told cannot be kept either.
    private static RuleHit Finite(RuleHit hit)
    {
        static double? Known(double? figure) => figure is { } number && double.IsFinite(number) ? number : null;

        return hit.Finding is not { } finding
            ? hit
            : hit with
            {
                Finding = finding with
                {
                    ChangePercent = Known(finding.ChangePercent),
                    DetectablePercent = Known(finding.DetectablePercent),
                    Probability = Known(finding.Probability),
                },
            };
    }

    /// <summary>The sizes of the injuries of a horse's open cases as they are known now; cases without a size are left out.</summary>
    public static async Task<IReadOnlyList<SizePicture>> PicturesAsync(RecordsSession session, Guid horseId, CancellationToken cancellation)
    {
        AnalysisSettings settings = SettingsStore.Of(session.Practice);
        List<SizePicture> pictures = [];
        await foreach (
            (CaseRecord injury, CaseCourse course, IReadOnlyList<LinkConstraint> words) in OpenAsync(session, horseId, cancellation)
        )
        {
            IReadOnlyList<SizeBar> bars = SizeBar.Of(CaseAnalyser.Analyse(course, words, settings, session.Today).Trend);
            if (bars.Count > 0)
            {
                pictures.Add(new SizePicture(injury.Limb, bars));
            }
        }

        return pictures;
    }

    private static async IAsyncEnumerable<(CaseRecord Case, CaseCourse Course, IReadOnlyList<LinkConstraint> Words)> OpenAsync(
        RecordsSession session,
        Guid horseId,
        [EnumeratorCancellation] CancellationToken cancellation
    )
    {
        List<CaseRecord> open = await ExerciseRows
            .OpenCases(session.Records)
            .AsNoTracking()
            .Where(injury => injury.HorseId == horseId)
            .OrderBy(injury => injury.Id)
            .ToListAsync(cancellation);
        foreach (CaseRecord injury in open)
        {
            (CaseCourse course, IReadOnlyList<LinkConstraint> words) = await CaseRows.StandingAsync(
                session.Records,
                injury,
                session.Today,
                cancellation
            );
            yield return (injury, course, words);
        }
    }

    /// <summary>
    /// Whether what a decision rested on has changed: the same examinations, their links or the settings say something else today.
    /// Examinations that were made later change nothing of it; an older one that was brought in since does.
    /// </summary>
    public static bool HasChanged(CaseGround ground, CaseCourse course, IReadOnlyList<LinkConstraint> words, AnalysisSettings settings)
    {
        HashSet<string> read = [.. ground.Examinations.Select(RecordText.Of)];
        if (
            course.Examinations.Any(examination =>
                examination.State != ExaminationState.Signed && examination.Date < ground.AsOf && !read.Contains(examination.Id)
            )
        )
        {
            return true;
        }

        CaseCourse then = course with { Examinations = [.. course.Examinations.Where(examination => read.Contains(examination.Id))] };
        LinkConstraint[] said =
        [
            .. words.Where(word => read.Contains(word.First.ExaminationId) && read.Contains(word.Second.ExaminationId)),
        ];
        return InputHash.Of(then, said, settings, ground.AsOf) != ground.InputHash;
    }
}
