using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Covers;

/// <summary>Takes cover back; it stays in the history.</summary>
public sealed class WithdrawCover(RecordsAccess access) : Command<RecordInput, Saved>(access)
{
    private protected override Right Right => Right.ChangeCover;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        RecordInput input,
        CancellationToken cancellation
    )
    {
        CoverRecord? cover = await session.Records.Covers.FirstOrDefaultAsync(
            record => record.Id == input.Id && record.ArchivedAt == null,
            cancellation
        );
        if (cover is null)
        {
            return RecordProblems.NotFound("cover");
        }

        if (cover.Version != input.Version)
        {
            return RecordProblems.ChangedMeanwhile;
        }

        cover.ArchivedAt = session.Now;
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(cover.Id, cover.Version);
    }
}
