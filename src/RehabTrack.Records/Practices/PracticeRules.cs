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

        if (recheckIntervalDays is { } days and (< 1 or > LongestIntervalDays))
        {
            yield return new Problem(
                "recheckIntervalDays",
                "interval-out-of-range",
                RecordText.Of(days),
                "1",
                RecordText.Of(LongestIntervalDays)
            );
        }
    }
}
