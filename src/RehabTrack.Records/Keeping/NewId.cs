namespace RehabTrack.Records.Keeping;

/// <summary>
/// Makes identities that sort by the moment of their making: version 7 of RFC 9562 with a counter behind the milliseconds (its section
/// 6.2, method 1), so that what one command makes keeps its order, and lies side by side in the database.
/// </summary>
internal static class NewId
{
    private const int IdBytes = 16;
    private const int TimeBytes = 6;
    private static uint counter;

    public static Guid At(DateTime instant)
    {
        Span<byte> bytes = stackalloc byte[IdBytes];
        Guid.CreateVersion7(new DateTimeOffset(instant, TimeSpan.Zero)).TryWriteBytes(bytes, bigEndian: true, out _);
        uint count = Interlocked.Increment(ref counter);
        bytes[6] = (byte)(0x70 | ((count >> 22) & 0x0F));
        bytes[7] = (byte)(count >> 14);
        bytes[8] = (byte)(0x80 | ((count >> 8) & 0x3F));
        bytes[9] = (byte)count;
        return new Guid(bytes, bigEndian: true);
    }

    /// <summary>The moment, to the millisecond, at which an identity was made.</summary>
    public static DateTime InstantOf(Guid id)
    {
        Span<byte> bytes = stackalloc byte[IdBytes];
        id.TryWriteBytes(bytes, bigEndian: true, out _);
        long milliseconds = 0;
        for (int i = 0; i < TimeBytes; i++)
        {
            milliseconds = (milliseconds << 8) | bytes[i];
        }

        return DateTime.UnixEpoch.AddMilliseconds(milliseconds);
    }
}
