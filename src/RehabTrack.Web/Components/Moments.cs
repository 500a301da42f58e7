using RehabTrack.Records.Room;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components;

/// <summary>Instants as the practice's clock shows them.</summary>
public static class Moments
{
    /// <summary>As "8 Sep 2026, 14:05".</summary>
    /// <param name="utc">The instant, UTC.</param>
    /// <param name="timeZone">The practice's time zone.</param>
    public static string Of(DateTime utc, string timeZone)
    {
        DateTime local = Local(utc, timeZone);
        return $"{Figures.Date(DateOnly.FromDateTime(local))}, {local.ToString("HH:mm", TextCulture.Default)}";
    }

    /// <summary>The day of the instant on the practice's calendar.</summary>
    /// <param name="utc">The instant, UTC.</param>
    /// <param name="timeZone">The practice's time zone.</param>
    public static DateOnly DayOf(DateTime utc, string timeZone) => DateOnly.FromDateTime(Local(utc, timeZone));

    /// <summary>As "8 Sep 2026, 12:05:09 UTC": for whoever must be sure of the instant. Empty for none.</summary>
    /// <param name="utc">The instant, UTC.</param>
    public static string Utc(DateTime? utc) =>
        utc is { } instant
            ? $"{Figures.Date(DateOnly.FromDateTime(instant))}, {instant.ToString("HH:mm:ss 'UTC'", TextCulture.Default)}"
            : "";

    private static DateTime Local(DateTime utc, string timeZone) => PracticeTime.At(utc, timeZone);
}
