using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Links;

/// <summary>Takes a word on a link back.</summary>
public sealed class WithdrawLinkWord(RecordsAccess access) : Command<WithdrawLinkWordInput, Saved>(access)
{
    private protected override Right Right => Right.ChangeLinks;

    private protected override Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        WithdrawLinkWordInput input,
        CancellationToken cancellation
    ) => LinkWords.WithdrawAsync(session, input, cancellation);
}
