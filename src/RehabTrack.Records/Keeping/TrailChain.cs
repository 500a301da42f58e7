using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;

namespace RehabTrack.Records.Keeping;

/// <summary>
/// Chains new lines to the end of a practice's trail. The end is read inside the transaction that writes; the database lets one
/// transaction write at a time, from its beginning, so two writers never continue from the same line.
/// </summary>
internal sealed class TrailChain
{
    private long number;
    private byte[] hash;

    private TrailChain(long number, byte[] hash)
    {
        this.number = number;
        this.hash = hash;
    }

    /// <summary>The chain as it ends now.</summary>
    public static async Task<TrailChain> AtEndAsync(RecordsContext records, CancellationToken cancellation)
    {
        if (records.Database.CurrentTransaction is null)
        {
            throw new InvalidOperationException("The trail is written inside a transaction.");
        }

        var last = await records
            .Changes.Where(line => line.Number >= 1)
            .OrderByDescending(line => line.Number)
            .Select(line => new { line.Number, line.Hash })
            .FirstOrDefaultAsync(cancellation);
        return last is null ? AtBeginning() : new TrailChain(last.Number!.Value, last.Hash!);
    }

    /// <summary>A chain without a line.</summary>
    public static TrailChain AtBeginning() => new(0, TrailHash.BeforeFirst);

    /// <summary>Makes a line the next one.</summary>
    public void Append(ChangeRecord line)
    {
        line.Number = ++number;
        line.Salt = RandomNumberGenerator.GetBytes(TrailHash.SaltBytes);
        line.BodyHash = TrailHash.OfBody(line.Salt, line.BeforeJson, line.AfterJson);
        line.PreviousHash = hash;
        line.Hash = hash = TrailHash.OfLine(line);
    }
}
