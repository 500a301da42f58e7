using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Start;

/// <summary>
/// From the hash of a secret to the practice whose address it is. The database compares hashes of 256 random bits: how long it takes tells
/// nothing of a secret.
/// </summary>
internal static class SecretDoor
{
    /// <summary>The practice; null for a secret that is unknown. Whether it was taken back is for the door to ask.</summary>
    public static async Task<Guid?> PracticeOfAsync<T>(RecordsAccess access, string secretHash, CancellationToken cancellation)
        where T : SecretRecord
    {
        await using RecordsContext all = await access.OpenAsync(Guid.Empty, null, cancellation);
        return await all.Set<T>()
            .IgnoreQueryFilters()
            .Where(record => record.SecretHash == secretHash)
            .Select(record => (Guid?)record.PracticeId)
            .FirstOrDefaultAsync(cancellation);
    }
}
