using RehabTrack.Rechecks.Linking;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Links;

/// <summary>Says that two places are not the same; the program never links them.</summary>
public sealed class BreakLink(RecordsAccess access) : Command<LinkWordInput, Saved>(access)
{
    private protected override Right Right => Right.ChangeLinks;

    private protected override Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        LinkWordInput input,
        CancellationToken cancellation
    ) => LinkWords.SayAsync(session, LinkConstraintKind.Break, input, cancellation);
}
