using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Horses;

/// <summary>Reads one horse, put away or not.</summary>
public sealed class GetHorse(RecordsAccess access) : UseCase<Guid, HorseView>(access)
{
    private protected override Right Right => Right.SeeHorses;

    private protected override async Task<Outcome<HorseView>> RunAsync(
        RecordsSession session,
        Guid input,
        CancellationToken cancellation
    ) => await HorseViews.FindAsync(session, input, cancellation) is { } horse ? horse : RecordProblems.NotFound("horse");
}
