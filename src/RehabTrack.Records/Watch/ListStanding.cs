using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Schedule;
using RehabTrack.Rechecks.Watch;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Watch;

/// <summary>
/// Lists the horses that need a person, over the whole practice, most severe first, then what has stood longest. Asked for is the page,
/// from 1. Only horses with a line of exercise and kept summaries that ask for a look are read. Open concerns and overdue rechecks have
/// lists of their own beside it and are left out, so that nothing is told twice.
/// </summary>
public sealed class ListStanding(RecordsAccess access) : UseCase<int, StandingPage>(access)
{
    private const int RowsOfPage = 25;
    private const int MostAcknowledged = 50;

    private protected override Right Right => Right.WorkOnExercise;

    private protected override async Task<Outcome<StandingPage>> RunAsync(RecordsSession session, int input, CancellationToken cancellation)
    {
        RecordsContext records = session.Records;
        Guid[] horseIds = await (
            from horse in records.Horses
            where
                horse.ArchivedAt == null
                && (
                    (
                        records.ExerciseEntries.Any(line => line.HorseId == horse.Id && line.Number == 1)
                        && records.Cases.Any(injury => injury.HorseId == horse.Id && injury.ClosedAt == null && injury.ArchivedAt == null)
                    )
                    || records.Cases.Any(injury =>
                        injury.HorseId == horse.Id
                        && injury.ClosedAt == null
                        && injury.ArchivedAt == null
                        && records.CaseSummaries.Any(summary => summary.CaseId == injury.Id && summary.LookRank > 0)
                    )
                )
            select horse.Id
        ).ToArrayAsync(cancellation);
        IReadOnlyDictionary<Guid, WatchedHorse> horses = await WatchRows.HorsesAsync(
            session,
            horseIds,
            await WatchedAsync(records, horseIds, cancellation),
            cancellation
        );
        ILookup<Guid, (Acknowledged What, Acknowledgement Who)> said = await WatchRows.AcknowledgedAsync(session, horseIds, cancellation);
        Dictionary<Guid, WatchedFinding[]> standing = horses.ToDictionary(
            horse => horse.Key,
            horse =>
                StandingReader
                    .Of(horse.Value, session.Today)
                    .Where(IsListed)
                    .Select(finding => WatchRows.Watch(finding, said[horse.Key]))
                    .ToArray()
        );
        (Guid Id, WatchedFinding[] Findings)[] open = Sorted(standing, finding => finding.Acknowledgement is null);
        (Guid Id, WatchedFinding[] Findings)[] covered = Sorted(standing, finding => finding.Acknowledgement is not null);
        int pages = Math.Max(1, (open.Length + RowsOfPage - 1) / RowsOfPage);
        int page = Math.Clamp(input, 1, pages);
        (Guid Id, WatchedFinding[] Findings)[] shown = [.. open.Skip((page - 1) * RowsOfPage).Take(RowsOfPage)];
        (Guid Id, WatchedFinding[] Findings)[] folded = [.. covered.Take(MostAcknowledged)];
        Guid[] told = [.. shown.Concat(folded).Select(row => row.Id).Distinct()];
        Dictionary<Guid, (string Name, string? Yard)> names = await NamesAsync(records, told, cancellation);
        ILookup<Guid, CaseRow> cases = await CaseRowQueries.OfHorsesAsync(session, told, true, cancellation);
        StandingRow[] Rows((Guid Id, WatchedFinding[] Findings)[] rows) =>
            [.. rows.Select(row => new StandingRow(row.Id, names[row.Id].Name, names[row.Id].Yard, [.. cases[row.Id]], row.Findings))];
        return new StandingPage
        {
            Today = session.Today,
            Number = page,
            Count = pages,
            Rows = Rows(shown),
            HorseCount = open.Length,
            Acknowledged = Rows(folded),
            AcknowledgedCount = covered.Sum(row => row.Findings.Length),
        };
    }

    private static bool IsListed(StandingFinding finding) =>
        finding.Severity != FindingSeverity.Note && finding.Kind != StandingKind.ConcernOpen;

    private static (Guid Id, WatchedFinding[] Findings)[] Sorted(
        Dictionary<Guid, WatchedFinding[]> standing,
        Func<WatchedFinding, bool> isWanted
    ) =>
        [
            .. standing
                .Select(horse => (Id: horse.Key, Findings: horse.Value.Where(isWanted).ToArray()))
                .Where(horse => horse.Findings.Length > 0)
                .OrderByDescending(horse => horse.Findings[0].Finding.Severity)
                .ThenBy(horse => horse.Findings[0].Finding.Since)
                .ThenBy(horse => horse.Id),
        ];

    /// <summary>The open cases by horse, without what only a row that is shown needs. Rechecks have a list of their own beside this one.</summary>
    private static async Task<ILookup<Guid, WatchedCase>> WatchedAsync(
        RecordsContext records,
        Guid[] horseIds,
        CancellationToken cancellation
    )
    {
        var kept = await (
            from injury in ExerciseRows.OpenCases(records)
            join summary in records.CaseSummaries on injury.Id equals summary.CaseId
            where horseIds.Contains(injury.HorseId)
            select new
            {
                injury.Id,
                injury.HorseId,
                summary.LastExamination,
                summary.FindingsJson,
            }
        ).ToListAsync(cancellation);
        return kept.ToLookup(
            row => row.HorseId,
            row => new WatchedCase(RecordText.Of(row.Id), SummaryViews.FindingsOf(row.FindingsJson), row.LastExamination, RecheckDue.None)
        );
    }

    private static async Task<Dictionary<Guid, (string Name, string? Yard)>> NamesAsync(
        RecordsContext records,
        Guid[] horseIds,
        CancellationToken cancellation
    )
    {
        var named = await (
            from horse in records.Horses
            join stands in records.Yards on horse.YardId equals stands.Id into yards
            from yard in yards.DefaultIfEmpty()
            where horseIds.Contains(horse.Id)
            select new
            {
                horse.Id,
                horse.Name,
                Yard = yard == null ? null : yard.Name,
            }
        ).ToListAsync(cancellation);
        return named.ToDictionary(horse => horse.Id, horse => (horse.Name, (string?)horse.Yard));
    }
}
