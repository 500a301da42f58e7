using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Shares;

/// <summary>Takes a share link back: at the next tap it answers no more, on a page that is open, too.</summary>
public sealed class RevokeShare(RecordsAccess access) : Command<RecordInput, Saved>(access)
{
    private protected override Right Right => Right.ShareLinks;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        RecordInput input,
        CancellationToken cancellation
    )
    {
        ShareLinkRecord? share = await session.Records.ShareLinks.FirstOrDefaultAsync(
            record => record.Id == input.Id && record.RevokedAt == null,
            cancellation
        );
        if (share is null)
        {
            return RecordProblems.NotFound("share");
        }

        LivingShares.Revoke(session, share);
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(share.Id, share.Version);
    }
}
