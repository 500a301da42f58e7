using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.History;

/// <summary>Reads the practice's trail page by page, latest first.</summary>
public sealed class GetTrail(RecordsAccess access) : UseCase<TrailFilter, TrailPage>(access)
{
    private const int LinesOfPage = 50;

    private protected override Right Right => Right.SeeTrail;

    private protected override async Task<Outcome<TrailPage>> RunAsync(
        RecordsSession session,
        TrailFilter input,
        CancellationToken cancellation
    )
    {
        ChangeRecord[] lines = await TrailLines
            .Of(session, input)
            .AsNoTracking()
            .OrderByDescending(line => line.Number)
            .Take(LinesOfPage + 1)
            .ToArrayAsync(cancellation);
        ChangeRecord[] shown = lines[..Math.Min(lines.Length, LinesOfPage)];
        IReadOnlyList<ChangeView> told = await ChangeViews.OfAsync(
            session.Records,
            shown,
            line => ChangeFields.Of(line.BeforeJson, line.AfterJson),
            cancellation
        );
        return new TrailPage(
            told,
            lines.Length > LinesOfPage ? shown[^1].Number : null,
            TrailLines.KindsOf(session.Records),
            session.Practice.TimeZone
        );
    }
}
