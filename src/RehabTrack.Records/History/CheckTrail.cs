using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.History;

/// <summary>Checks the practice's whole trail; with a noted line, whether that is still there.</summary>
public sealed class CheckTrail(RecordsAccess access) : UseCase<CheckTrailInput, TrailCheck>(access)
{
    private protected override Right Right => Right.SeeTrail;

    private protected override async Task<Outcome<TrailCheck>> RunAsync(
        RecordsSession session,
        CheckTrailInput input,
        CancellationToken cancellation
    ) => await TrailWalk.AlongAsync(session.Records, input.Noted is { } noted ? [noted] : [], null, cancellation);
}
