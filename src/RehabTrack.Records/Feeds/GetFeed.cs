using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Feeds;

/// <summary>Tells whether the practice has a calendar address that answers; not found when it has none.</summary>
public sealed class GetFeed(RecordsAccess access) : UseCase<NoInput, FeedView>(access)
{
    private protected override Right Right => Right.SeeCases;

    private protected override async Task<Outcome<FeedView>> RunAsync(
        RecordsSession session,
        NoInput input,
        CancellationToken cancellation
    ) =>
        await (
            from feed in session.Records.Feeds
            join person in session.Records.People on feed.MadeById equals person.Id
            where feed.RevokedAt == null && feed.ArchivedAt == null
            select new FeedView(feed.Id, feed.Version, person.Name, feed.MadeAt)
        ).FirstOrDefaultAsync(cancellation)
            is { } found
            ? found
            : RecordProblems.NotFound("feed");
}
