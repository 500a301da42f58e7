using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Practices;

/// <summary>What a practice's time zone and usual interval must be, new or changed.</summary>
internal static class PracticeRules
{
    private const int LongestIntervalDays = 730;

    public static IEnumerable<Problem> Check(string timeZone, int? recheckIntervalDays)
    {
        if (Checks.Unkeepable("timeZone", timeZone, Checks.LongestName) is { } unkeepable)
        {
            yield return unkeepable;
        }
        else if (!PracticeTime.IsKnown(timeZone))
        {
            yield return new Problem("timeZone", "time-zone-unknown", timeZone);
        }

        if (OutOfRange("recheckIntervalDays", recheckIntervalDays, 1, LongestIntervalDays) is { } interval)
        {
            yield return interval;
        }
    }

    /// <summary>How long words may be kept; nothing is wrong with null, which takes the table.</summary>
    public static IEnumerable<Problem> CheckKept(string field, int? days) =>
        OutOfRange(field, days, Retention.Range.Fewest, Retention.Range.Most) is { } wrong ? [wrong] : [];

    private static Problem? OutOfRange(string field, int? days, int fewest, int most) =>
        days is { } given && (given < fewest || given > most)
            ? new Problem(field, "interval-out-of-range", RecordText.Of(given), RecordText.Of(fewest), RecordText.Of(most))
            : null;
}
