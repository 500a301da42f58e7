using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Covers;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Shares;

namespace RehabTrack.Records.Referrals;

/// <summary>Lists the reports that were released on a case, and shows what one would say today.</summary>
public sealed class ListReports(RecordsAccess access) : UseCase<Guid, CaseReportsView>(access)
{
    private protected override Right Right => Right.SeeCases;

    private protected override async Task<Outcome<CaseReportsView>> RunAsync(
        RecordsSession session,
        Guid input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        if (await ReportRows.CaseAsync(records, input, cancellation) is not { } injury)
        {
            return RecordProblems.NotFound("case");
        }

        List<ReportRecord> released = await ReportRows
            .OfPractice(records)
            .Where(report => report.CaseId == input)
            .OrderByDescending(report => report.ReleasedAt)
            .ThenByDescending(report => report.Id)
            .ToListAsync(cancellation);
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
            records,
            released.Select(report => (Guid?)report.PersonId),
            cancellation
        );
        List<ReportReader> readers = await (
            from period in LivingShares.Periods(records)
            join person in records.People on period.PersonId equals person.Id
            where period.HorseId == injury.HorseId && period.Relation == HorseRelation.ReferringVet
            orderby person.FoldedName, person.Id
            select new ReportReader(person.Id, person.Name)
        ).ToListAsync(cancellation);
        return new CaseReportsView
        {
            CaseId = injury.Id,
            HorseId = injury.HorseId,
            TimeZone = session.Practice.TimeZone,
            Readers = [.. readers.Distinct()],
            ReleaseRefused = session.Allows(Right.DecideExercise)
                ? await HorseVets.RefusalAsync(session, injury.HorseId, cancellation)
                : null,
            Today = await ReportRows.ContentAsync(session, injury, null, cancellation),
            Released =
            [
                .. released.Select(report => new ReportView(
                    report.Id,
                    PersonNames.Name(names, report.PersonId) ?? "",
                    report.ReleasedAt,
                    ReportRows.Read(report)
                )),
            ],
        };
    }
}
