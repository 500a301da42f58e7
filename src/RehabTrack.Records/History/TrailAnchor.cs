using System.Globalization;

namespace RehabTrack.Records.History;

/// <summary>
/// A line of a trail by its number and hash. Kept elsewhere, it tells later whether the trail up to there is still the one it was.
/// </summary>
/// <param name="Number">The line's number, from 1.</param>
/// <param name="Hash">Its hash, 64 lower-case hexadecimal digits.</param>
public sealed record TrailAnchor(long Number, string Hash)
{
    private const int HashDigits = 64;
    private const char Between = ':';

    /// <summary>Reads "NUMBER:HASH"; null for anything else.</summary>
    public static TrailAnchor? Parse(string? text)
    {
        string[] parts = (text ?? "").Trim().Split(Between);
        return
            parts is [var number, var hash]
            && long.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out long read)
            && read >= 1
            && hash.Length == HashDigits
            && hash.All(char.IsAsciiHexDigit)
            ? new TrailAnchor(read, hash.ToLowerInvariant())
            : null;
    }

    /// <inheritdoc />
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Number}{Between}{Hash}");
}
