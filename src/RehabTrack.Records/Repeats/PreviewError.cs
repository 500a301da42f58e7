using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Repeats;

/// <summary>Analyses every open case with another measurement error, and tells which verdicts would move. Nothing is written.</summary>
public sealed class PreviewError(RecordsAccess access) : UseCase<MeasurementErrorSettings, ErrorPreview>(access)
{
    private protected override Right Right => Right.SeeCases;

    private protected override async Task<Outcome<ErrorPreview>> RunAsync(
        RecordsSession session,
        MeasurementErrorSettings input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        AnalysisSettings now = SettingsStore.Of(session.Practice);
        AnalysisSettings then = now with { Error = input };
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
                // The error of measurement links nothing: both analyses share the links.
                CaseAnalysis analysis = links is null
                    ? CaseAnalyser.Analyse(course, constraints, settings, session.Today)
                    : CaseAnalyser.AnalyseLinked(course, links, settings, session.Today);
                links = analysis.Links;
                return analysis.Trend.Verdict;
            }

            Verdict was = VerdictWith(now);
            Verdict becomes = VerdictWith(then);
            if (was != becomes)
            {
                moved.Add(new MovedVerdict(one.injury.Id, one.Name, one.injury.Limb, one.injury.Structure, was, becomes));
            }
        }

        return new ErrorPreview(moved, open.Count - moved.Count);
    }
}
