using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Schedule;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Overview;

/// <summary>Reads who is due and who needs a look, from the kept summaries. Only examinations signed here raise reminders.</summary>
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
        IQueryable<CaseSummaryRecord> overdue = summaries.Where(summary => summary.LastSigned < dueToday);
        IQueryable<CaseSummaryRecord> soon = summaries.Where(summary => summary.LastSigned >= dueToday && summary.LastSigned <= dueSoon);
        IQueryable<CaseSummaryRecord> look = summaries.Where(summary => summary.LookRank > 0);
        IQueryable<CaseSummaryRecord> history = summaries.Where(summary => summary.LastSigned == null && summary.ExaminationCount > 0);
        return new OverviewView
        {
            PracticeName = session.Practice.Name,
            Today = session.Today,
            HorseCount = await records.Horses.CountAsync(horse => horse.ArchivedAt == null, cancellation),
            OpenCaseCount = await Open(records).CountAsync(cancellation),
            Overdue = await RowsAsync(session, overdue.OrderBy(summary => summary.LastSigned), cancellation),
            OverdueCount = await CountAsync(records, overdue, cancellation),
            Soon = await RowsAsync(session, soon.OrderBy(summary => summary.LastSigned), cancellation),
            SoonCount = await CountAsync(records, soon, cancellation),
            NeedsLook = await RowsAsync(
                session,
                look.OrderByDescending(summary => summary.LookRank).ThenByDescending(summary => summary.LastExamination),
                cancellation
            ),
            NeedsLookCount = await CountAsync(records, look, cancellation),
            OnlyHistory = await RowsAsync(session, history.OrderByDescending(summary => summary.LastExamination), cancellation),
            OnlyHistoryCount = await CountAsync(records, history, cancellation),
            Drafts = await DraftsAsync(records, cancellation),
        };
    }

    private static IQueryable<CaseRecord> Open(RecordsContext records) =>
        records.Cases.Where(injury =>
            injury.ArchivedAt == null
            && injury.ClosedAt == null
            && records.Horses.Any(horse => horse.Id == injury.HorseId && horse.ArchivedAt == null)
        );

    private static Task<int> CountAsync(RecordsContext records, IQueryable<CaseSummaryRecord> summaries, CancellationToken cancellation) =>
        summaries.CountAsync(summary => Open(records).Any(injury => injury.Id == summary.CaseId), cancellation);

    private static async Task<IReadOnlyList<OverviewRow>> RowsAsync(
        RecordsSession session,
        IQueryable<CaseSummaryRecord> summaries,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        var rows = await (
            from summary in summaries
            join injury in records.Cases on summary.CaseId equals injury.Id
            join horse in records.Horses on injury.HorseId equals horse.Id
            join stands in records.Yards on horse.YardId equals stands.Id into yards
            from yard in yards.DefaultIfEmpty()
            where injury.ArchivedAt == null && injury.ClosedAt == null && horse.ArchivedAt == null
            select new
            {
                Summary = summary,
                Case = injury,
                horse.Name,
                Yard = yard == null ? null : yard.Name,
            }
        )
            .Take(MostRows)
            .ToArrayAsync(cancellation);
        return
        [
            .. rows.Select(row => new OverviewRow(
                row.Case.HorseId,
                row.Name,
                row.Yard,
                CaseRowQueries.Of(row.Case, row.Summary, session.Practice)
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
