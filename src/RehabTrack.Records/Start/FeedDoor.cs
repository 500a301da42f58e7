using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Feeds;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Start;

/// <summary>
/// What a calendar program reads under the secret address. Nobody is signed in there: whoever holds the secret may see when a horse of the
/// practice is seen, and nothing else.
/// </summary>
public sealed class FeedDoor(RecordsAccess access)
{
    /// <summary>Days for which a past entry stays, so that a program that was off for a while still learns of a move or a cancellation.</summary>
    private const int PastDays = 120;

    /// <summary>The booked rechecks of the practice whose address it is; null for an address that is unknown or was taken back.</summary>
    /// <param name="secretHash">SHA-256 of the secret, 64 lower-case hexadecimal digits.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<CalendarContent?> FindAsync(string secretHash, CancellationToken cancellation = default)
    {
        if (await SecretDoor.PracticeOfAsync<FeedRecord>(access, secretHash, cancellation) is not { } id)
        {
            return null;
        }

        await using RecordsContext records = await access.OpenAsync(id, null, cancellation);
        PracticeRecord? practice = await records.Practices.AsNoTracking().FirstOrDefaultAsync(cancellation);
        if (
            practice is not { ArchivedAt: null }
            || !await records.Feeds.AnyAsync(
                feed => feed.SecretHash == secretHash && feed.RevokedAt == null && feed.ArchivedAt == null,
                cancellation
            )
        )
        {
            return null;
        }

        DateOnly first = PracticeTime.DateOf(access.Now, practice.TimeZone).AddDays(-PastDays);
        return await CalendarVisits.OfAsync(records, practice, records.Bookings.Where(booking => booking.Date >= first), cancellation);
    }
}
