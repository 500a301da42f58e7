using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Feeds;

/// <summary>Gives the practice a calendar address; an older one answers no more.</summary>
public sealed class RenewFeed(RecordsAccess access) : Command<RenewFeedInput, Saved>(access)
{
    private protected override Right Right => Right.ChangePractice;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        RenewFeedInput input,
        CancellationToken cancellation
    )
    {
        List<FeedRecord> older = await session.Records.Feeds.Where(feed => feed.RevokedAt == null).ToListAsync(cancellation);
        older.ForEach(feed => feed.Revoke(session.Now, session.Person.Id));
        FeedRecord made = new()
        {
            Id = session.NewId(),
            SecretHash = SecretRecord.CheckedHash(input.SecretHash),
            MadeById = session.Person.Id,
            MadeAt = session.Now,
        };
        session.Records.Feeds.Add(made);
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(made.Id, made.Version);
    }
}
