using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Schedule;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Overview;

/// <summary>Reads who is due, from the kept summaries. Only examinations signed here raise reminders.</summary>
public sealed class GetOverview(RecordsAccess access) : UseCase<NoInput, OverviewView>(access)
{
    private const int MostRows = 50;
    private static readonly int SoonDays = new ScheduleSettings().SoonDays;

    private protected override Right Right => Right.SeeCases;

    private protected override async Task<Outcome<OverviewView>> RunAsync(
        RecordsSession session,
        NoInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        int interval = SummaryViews.Interval(session.Practice);
        DateOnly dueToday = session.Today.AddDays(-interval);
        DateOnly dueSoon = dueToday.AddDays(SoonDays);
        IQueryable<CaseSummaryRecord> summaries = records.CaseSummaries.AsNoTracking();
        IReadOnlyDictionary<Guid, SignedRecheck> signed = await SignedRechecks.OfPracticeAsync(session, cancellation);
        (Guid[] own, int ownOverdue, Guid[] ownSoon) = await OwnRhythmsAsync(session, signed, cancellation);
        IQueryable<CaseSummaryRecord> soon = summaries.Where(summary =>
            (summary.LastSigned >= dueToday && summary.LastSigned <= dueSoon && !own.Contains(summary.CaseId))
            || ownSoon.Contains(summary.CaseId)
        );
        IQueryable<CaseSummaryRecord> history = summaries.Where(summary => summary.LastSigned == null && summary.ExaminationCount > 0);
        var counts = await (
            from injury in Open(records)
            join kept in summaries on injury.Id equals kept.CaseId into found
            from summary in found.DefaultIfEmpty()
            group summary by 1 into all
            select new
            {
                Cases = all.Count(),
                Overdue = all.Count(summary => summary.LastSigned < dueToday && !own.Contains(summary.CaseId)),
                Soon = all.Count(summary =>
                    summary.LastSigned >= dueToday && summary.LastSigned <= dueSoon && !own.Contains(summary.CaseId)
                ),
                History = all.Count(summary => summary.LastSigned == null && summary.ExaminationCount > 0),
            }
        ).SingleOrDefaultAsync(cancellation);
        return new OverviewView
        {
            PracticeName = session.Practice.Name,
            TimeZone = session.Practice.TimeZone,
            Today = session.Today,
            HorseCount = await records.Horses.CountAsync(horse => horse.ArchivedAt == null, cancellation),
            OpenCaseCount = counts?.Cases ?? 0,
            OverdueCount = (counts?.Overdue ?? 0) + ownOverdue,
            Soon = ByDueDate(await RowsAsync(session, signed, soon.OrderBy(summary => summary.LastSigned), cancellation)),
            SoonCount = (counts?.Soon ?? 0) + ownSoon.Length,
            OnlyHistory = await RowsAsync(session, signed, history.OrderByDescending(summary => summary.LastExamination), cancellation),
            OnlyHistoryCount = counts?.History ?? 0,
            Drafts = await DraftsAsync(records, cancellation),
        };
    }

    /// <summary>The open cases with an interval or a signed recheck of their own, how many of them are overdue and which are due soon.</summary>
    private static async Task<(Guid[] All, int Overdue, Guid[] Soon)> OwnRhythmsAsync(
        RecordsSession session,
        IReadOnlyDictionary<Guid, SignedRecheck> signed,
        CancellationToken cancellation
    )
    {
        Guid[] signedFor = [.. signed.Keys];
        var cases = await (
            from injury in Open(session.Records)
            join summary in session.Records.CaseSummaries on injury.Id equals summary.CaseId
            where injury.RecheckIntervalDays != null || signedFor.Contains(injury.HorseId)
            select new
            {
                injury.Id,
                injury.HorseId,
                injury.RecheckIntervalDays,
                summary.LastSigned,
            }
        ).ToArrayAsync(cancellation);
        ILookup<RecheckState, Guid> states = cases.ToLookup(
            row =>
                DueDates
                    .Of(row.RecheckIntervalDays, row.LastSigned, session, signed.GetValueOrDefault(row.HorseId, SignedRecheck.None))
                    .State,
            row => row.Id
        );
        return (
            [.. cases.Select(row => row.Id)],
            states[RecheckState.Overdue].Count(),
            [.. states[RecheckState.Due], .. states[RecheckState.Soon]]
        );
    }

    private static IReadOnlyList<OverviewRow> ByDueDate(IReadOnlyList<OverviewRow> rows) =>
        [.. rows.OrderBy(row => row.Case.Summary?.DueOn)];

    private static IQueryable<CaseRecord> Open(RecordsContext records) =>
        records.Cases.Where(injury =>
            injury.ArchivedAt == null
            && injury.ClosedAt == null
            && records.Horses.Any(horse => horse.Id == injury.HorseId && horse.ArchivedAt == null)
        );

    /// <summary>First which cases, by the few columns that order them; then those cases, so that nothing wide is ever sorted.</summary>
    private static async Task<IReadOnlyList<OverviewRow>> RowsAsync(
        RecordsSession session,
        IReadOnlyDictionary<Guid, SignedRecheck> signed,
        IQueryable<CaseSummaryRecord> summaries,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        Guid[] caseIds = await summaries
            .Where(summary => Open(records).Any(injury => injury.Id == summary.CaseId))
            .Select(summary => summary.CaseId)
            .Take(MostRows)
            .ToArrayAsync(cancellation);
        if (caseIds.Length == 0)
        {
            return [];
        }

        var rows = await (
            from summary in records.CaseSummaries.AsNoTracking()
            join injury in records.Cases on summary.CaseId equals injury.Id
            join horse in records.Horses on injury.HorseId equals horse.Id
            join stands in records.Yards on horse.YardId equals stands.Id into yards
            from yard in yards.DefaultIfEmpty()
            where caseIds.Contains(summary.CaseId)
            select new
            {
                Summary = summary,
                Case = injury,
                horse.Name,
                Yard = yard == null ? null : yard.Name,
            }
        ).ToDictionaryAsync(row => row.Case.Id, cancellation);
        return
        [
            .. caseIds
                .Select(id => rows[id])
                .Select(row => new OverviewRow(
                    row.Case.HorseId,
                    row.Name,
                    row.Yard,
                    CaseRowQueries.Of(row.Case, row.Summary, session, signed)
                )),
        ];
    }

    private static async Task<IReadOnlyList<DraftRow>> DraftsAsync(RecordsContext records, CancellationToken cancellation) =>
        await (
            from draft in records.Examinations
            join injury in records.Cases on draft.CaseId equals injury.Id
            join horse in records.Horses on injury.HorseId equals horse.Id
            join entered in records.People on draft.EnteredById equals entered.Id into people
            from person in people.DefaultIfEmpty()
            where draft.State == ExaminationState.Draft && draft.ArchivedAt == null && injury.ArchivedAt == null && horse.ArchivedAt == null
            orderby draft.WrittenAt descending
            select new DraftRow(
                draft.Id,
                injury.Id,
                horse.Name,
                injury.Limb,
                draft.Date,
                person == null ? null : person.Name,
                draft.WrittenAt
            )
        )
            .Take(MostRows)
            .ToArrayAsync(cancellation);
}
