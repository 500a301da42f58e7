using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
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
        int staying = 0;
        foreach (var one in open)
        {
            (CaseCourse course, IReadOnlyList<LinkConstraint> constraints) = await CaseRows.StandingAsync(
                records,
                one.injury,
                session.Today,
                cancellation
            );
            // The error of measurement and the thresholds link nothing: unless the links are set anew, both analyses share them.
            CaseAnalysis was = CaseAnalyser.Analyse(course, constraints, now, session.Today);
            CaseAnalysis becomes =
                input.Linking != now.Linking
                    ? CaseAnalyser.Analyse(course, constraints, input, session.Today)
                    : CaseAnalyser.AnalyseLinked(course, was.Links, input, session.Today);
            foreach (Told told in VerdictsOf(was))
            {
                Told then = VerdictsOf(becomes).First(other => other.IsOfSame(told));
                if (told.Verdict == then.Verdict)
                {
                    staying++;
                    continue;
                }

                moved.Add(
                    new MovedVerdict(
                        one.injury.Id,
                        one.Name,
                        one.injury.Limb,
                        one.injury.Structure,
                        told.Lesion,
                        told.Part,
                        told.Verdict,
                        then.Verdict
                    )
                );
            }
        }

        return new SettingsPreview(moved, staying);
    }

    // A case of one lesion speaks once.
    private static IEnumerable<Told> VerdictsOf(CaseAnalysis analysis) =>
        analysis
            .Lesions.Where(_ => analysis.Lesions.Count > 1)
            .Select(lesion => new Told(lesion.Lesion, lesion.Part, lesion.Trend.Verdict))
            .Prepend(new Told(null, null, analysis.Trend.Verdict));

    private sealed record Told(string? Lesion, Part? Part, Verdict Verdict)
    {
        public bool IsOfSame(Told other) => string.Equals(Lesion, other.Lesion, StringComparison.Ordinal) && Part == other.Part;
    }
}
