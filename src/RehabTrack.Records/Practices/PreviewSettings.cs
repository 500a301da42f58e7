using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Practices;

/// <summary>Analyses every open case with other settings, and tells which verdicts would move. Nothing is written.</summary>
public sealed class PreviewSettings(RecordsAccess access) : UseCase<AnalysisSettings, SettingsPreview>(access)
{
    private protected override Right Right => Right.SeeCases;

    private protected override async Task<Outcome<SettingsPreview>> RunAsync(
        RecordsSession session,
        AnalysisSettings input,
        CancellationToken cancellation
    )
    {
        if (SettingsRules.Check(input).ToList() is { Count: > 0 } problems)
        {
            return problems;
        }

        RecordsContext records = session.Records;
        AnalysisSettings now = SettingsStore.Of(session.Practice);
        var open = await (
            from injury in records.Cases.AsNoTracking()
            join horse in records.Horses on injury.HorseId equals horse.Id
            where injury.ArchivedAt == null && injury.ClosedAt == null && horse.ArchivedAt == null
            orderby horse.FoldedName, injury.Id
            select new { injury, horse.Name }
        ).ToListAsync(cancellation);
        List<MovedVerdict> moved = [];
        foreach (var one in open)
        {
            (CaseCourse course, IReadOnlyList<LinkConstraint> constraints) = await CaseRows.StandingAsync(
                records,
                one.injury,
                session.Today,
                cancellation
            );
            LinkedCourse? links = null;
            Verdict VerdictWith(AnalysisSettings settings)
            {
                // The error of measurement and the thresholds link nothing: unless the links are set anew, both analyses share them.
                CaseAnalysis analysis =
                    links is null || input.Linking != now.Linking
                        ? CaseAnalyser.Analyse(course, constraints, settings, session.Today)
                        : CaseAnalyser.AnalyseLinked(course, links, settings, session.Today);
                links = analysis.Links;
                return analysis.Trend.Verdict;
            }

            Verdict was = VerdictWith(now);
            Verdict becomes = VerdictWith(input);
            if (was != becomes)
            {
                moved.Add(new MovedVerdict(one.injury.Id, one.Name, one.injury.Limb, one.injury.Structure, was, becomes));
            }
        }

        return new SettingsPreview(moved, open.Count - moved.Count);
    }
}
