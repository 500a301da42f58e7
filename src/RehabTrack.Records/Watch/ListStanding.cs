using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Permits;
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
/// from 1. What the analyses say is read from the kept summaries; exercise only of horses that have a line of it.
/// </summary>
public sealed class ListStanding(RecordsAccess access) : UseCase<int, StandingPage>(access)
{
    private const int RowsOfPage = 25;
    private const int MostAcknowledged = 50;

    private protected override Right Right => Right.WorkOnExercise;

    private protected override async Task<Outcome<StandingPage>> RunAsync(RecordsSession session, int input, CancellationToken cancellation)
    {
        RecordsContext records = session.Records;
        ILookup<Guid, WatchedCase> cases = await WatchedAsync(session, cancellation);
        HashSet<Guid> atWork =
        [
            .. await records.ExerciseEntries.Where(line => line.Number == 1).Select(line => line.HorseId).ToListAsync(cancellation),
        ];
        Guid[] horseIds =
        [
            .. cases
                .Where(horse =>
                    atWork.Contains(horse.Key) || horse.Any(injury => injury.Findings.Count > 0 || injury.Due.State == RecheckState.Overdue)
                )
                .Select(horse => horse.Key),
        ];
        IReadOnlyDictionary<Guid, WatchedHorse> horses = await WatchRows.HorsesAsync(session, horseIds, cases, cancellation);
        ILookup<Guid, (Acknowledged What, Acknowledgement Who)> said = await WatchRows.AcknowledgedAsync(session, horseIds, cancellation);
        Dictionary<Guid, WatchedFinding[]> standing = horses.ToDictionary(
            horse => horse.Key,
            horse => StandingReader.Of(horse.Value, session.Today).Select(finding => WatchRows.Watch(finding, said[horse.Key])).ToArray()
        );
        (Guid Id, WatchedFinding[] Findings)[] open = Sorted(standing, finding => finding.Acknowledgement is null);
        (Guid Id, WatchedFinding[] Findings)[] covered = Sorted(standing, finding => finding.Acknowledgement is not null);
        int pages = Math.Max(1, (open.Length + RowsOfPage - 1) / RowsOfPage);
        int page = Math.Clamp(input, 1, pages);
        (Guid Id, WatchedFinding[] Findings)[] shown = [.. open.Skip((page - 1) * RowsOfPage).Take(RowsOfPage)];
        (Guid Id, WatchedFinding[] Findings)[] folded = [.. covered.Take(MostAcknowledged)];
        Guid[] told = [.. shown.Concat(folded).Select(row => row.Id).Distinct()];
        Dictionary<Guid, (string Name, string? Yard)> names = await NamesAsync(records, told, cancellation);
        ILookup<Guid, CaseRow> rowCases = await CaseRowQueries.OfHorsesAsync(session, told, true, cancellation);
        StandingRow[] Rows((Guid Id, WatchedFinding[] Findings)[] rows) =>
            [.. rows.Select(row => new StandingRow(row.Id, names[row.Id].Name, names[row.Id].Yard, [.. rowCases[row.Id]], row.Findings))];
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

    /// <summary>The open cases of the practice by horse, each with when its recheck is due.</summary>
    private static async Task<ILookup<Guid, WatchedCase>> WatchedAsync(RecordsSession session, CancellationToken cancellation)
    {
        RecordsContext records = session.Records;
        IReadOnlyDictionary<Guid, SignedRecheck> signed = await SignedRechecks.OfPracticeAsync(session, cancellation);
        var kept = await (
            from injury in ExerciseRows.OpenCases(records)
            join horse in records.Horses on injury.HorseId equals horse.Id
            where horse.ArchivedAt == null
            join of in records.CaseSummaries on injury.Id equals of.CaseId into summaries
            from summary in summaries.DefaultIfEmpty()
            select new
            {
                injury.Id,
                injury.HorseId,
                injury.RecheckIntervalDays,
                LastExamination = summary == null ? null : summary.LastExamination,
                LastSigned = summary == null ? null : summary.LastSigned,
                FindingsJson = summary == null ? null : summary.FindingsJson,
            }
        ).ToListAsync(cancellation);
        return kept.ToLookup(
            row => row.HorseId,
            row => new WatchedCase(
                RecordText.Of(row.Id),
                row.FindingsJson is { } json ? SummaryViews.FindingsOf(json) : [],
                row.LastExamination,
                DueDates.Of(row.RecheckIntervalDays, row.LastSigned, session, signed.GetValueOrDefault(row.HorseId, SignedRecheck.None))
            )
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
