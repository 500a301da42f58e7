using System.Globalization;

namespace RehabTrack.Records.Sqlite.Backups;

/// <summary>How backups are named: by the moment of their making, so that they sort by it.</summary>
internal static class BackupName
{
    private const string Start = "rehabtrack-";
    private const string ByHandMark = "-by-hand";
    private const string End = ".zip";
    private const string Format = "yyyyMMdd'T'HHmmss'Z'";

    public static string Of(DateTime utc, bool byHand) =>
        $"{Start}{utc.ToString(Format, CultureInfo.InvariantCulture)}{(byHand ? ByHandMark : "")}{End}";

    /// <summary>When it was made, and whether by hand; null for a file that is not named as a backup.</summary>
    public static (DateTime At, bool ByHand)? Read(string name)
    {
        if (!name.StartsWith(Start, StringComparison.Ordinal) || !name.EndsWith(End, StringComparison.Ordinal))
        {
            return null;
        }

        string moment = name[Start.Length..^End.Length];
        bool byHand = moment.EndsWith(ByHandMark, StringComparison.Ordinal);
        return DateTime.TryParseExact(
            byHand ? moment[..^ByHandMark.Length] : moment,
            Format,
            CultureInfo.InvariantCulture,
            DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal,
            out DateTime at
        )
            ? (at, byHand)
            : null;
    }
}
