using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Shares;

namespace RehabTrack.Records.Referrals;

/// <summary>
/// Reads the reports that were released for the person who asks, latest first, while they stand beside the horse; behind a share link the one
/// that it opens.
/// </summary>
public sealed class GetReports(RecordsAccess access) : UseCase<NoInput, IReadOnlyList<ReportView>>(access)
{
    private protected override Right Right => Right.SeeReports;

    private protected override async Task<Outcome<IReadOnlyList<ReportView>>> RunAsync(
        RecordsSession session,
        NoInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        Guid personId = session.Person.Id;
        IQueryable<ReportRecord> own = LivingShares.Reports(records).Where(report => report.PersonId == personId);
        if (session.Scope is { } scope)
        {
            Guid only = scope.ReportId ?? Guid.Empty;
            own = own.Where(report => report.Id == only);
        }

        List<ReportRecord> reports = await own.OrderByDescending(report => report.ReleasedAt)
            .ThenByDescending(report => report.Id)
            .ToListAsync(cancellation);
        return reports
            .Select(report => new ReportView(report.Id, session.Person.Name, report.ReleasedAt, ReportRows.Read(report)))
            .ToList();
    }
}
