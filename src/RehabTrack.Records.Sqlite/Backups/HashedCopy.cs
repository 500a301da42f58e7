using System.Security.Cryptography;

namespace RehabTrack.Records.Sqlite.Backups;

/// <summary>Copies a stream and reckons its SHA-256 on the way, so that what is hashed is what was copied.</summary>
internal static class HashedCopy
{
    private const int Block = 1 << 17;

    /// <summary>Copies up to one byte more than is allowed: a longer stream is told by its length.</summary>
    /// <param name="from">Read from.</param>
    /// <param name="to">Written to; null only reads.</param>
    /// <param name="most">Bytes that are allowed.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task<(long Length, string Sha256)> RunAsync(Stream from, Stream? to, long most, CancellationToken cancellation)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        byte[] block = new byte[Block];
        long length = 0;
        int read;
        while (length <= most && (read = await from.ReadAsync(block, cancellation)) > 0)
        {
            length += read;
            hash.AppendData(block, 0, read);
            if (to is not null)
            {
                await to.WriteAsync(block.AsMemory(0, read), cancellation);
            }
        }

        return (length, Convert.ToHexStringLower(hash.GetHashAndReset()));
    }
}
