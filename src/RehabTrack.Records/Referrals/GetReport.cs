using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Referrals;

/// <summary>Reads one released report: one's own for a referring vet, any for those who work in the practice.</summary>
public sealed class GetReport(RecordsAccess access) : UseCase<Guid, ReportView>(access)
{
    private protected override Right Right => Right.SeeReports;

    private protected override async Task<Outcome<ReportView>> RunAsync(RecordsSession session, Guid input, CancellationToken cancellation)
    {
        IQueryable<ReportRecord> readable =
            session.Reach == Reach.OwnHorses ? ReportRows.Own(session) : ReportRows.OfPractice(session.Records);
        var found = await (
            from report in readable
            join person in session.Records.People on report.PersonId equals person.Id
            where report.Id == input
            select new { Report = report, person.Name }
        ).FirstOrDefaultAsync(cancellation);
        return found is null
            ? RecordProblems.NotFound("report")
            : new ReportView(found.Report.Id, found.Name, found.Report.ReleasedAt, ReportRows.Read(found.Report));
    }
}
