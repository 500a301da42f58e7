using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

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
        List<ReportRecord> reports = await ReportRows
            .Own(session)
            .OrderByDescending(report => report.ReleasedAt)
            .ThenByDescending(report => report.Id)
            .ToListAsync(cancellation);
        return reports
            .Select(report => new ReportView(report.Id, session.Person.Name, report.ReleasedAt, ReportRows.Read(report)))
            .ToList();
    }
}
