using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Feeds;

/// <summary>Takes the calendar address back: it answers no more.</summary>
public sealed class RevokeFeed(RecordsAccess access) : Command<RecordInput, Saved>(access)
{
    private protected override Right Right => Right.ChangePractice;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        RecordInput input,
        CancellationToken cancellation
    )
    {
        FeedRecord? feed = await session.Records.Feeds.FirstOrDefaultAsync(
            record => record.Id == input.Id && record.RevokedAt == null,
            cancellation
        );
        if (feed is null)
        {
            return RecordProblems.NotFound("feed");
        }

        feed.Revoke(session.Now, session.Person.Id);
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(feed.Id, feed.Version);
    }
}
