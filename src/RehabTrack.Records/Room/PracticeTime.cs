namespace RehabTrack.Records.Room;

/// <summary>Turns instants into the calendar dates of a practice.</summary>
public static class PracticeTime
{
    /// <summary>Whether the time zone is known here, in whatever letters it is written.</summary>
    public static bool IsKnown(string timeZone) => Find(timeZone) is not null;

    /// <summary>The practice's date at an instant.</summary>
    /// <param name="instant">UTC.</param>
    /// <param name="timeZone">The practice's time zone, as "Europe/Vienna".</param>
    public static DateOnly DateOf(DateTime instant, string timeZone) => DateOnly.FromDateTime(At(instant, timeZone));

    /// <summary>The practice's wall-clock time at an instant.</summary>
    /// <param name="instant">UTC.</param>
    /// <param name="timeZone">The practice's time zone.</param>
    public static DateTime At(DateTime instant, string timeZone) => TimeZoneInfo.ConvertTimeFromUtc(instant, ZoneOf(timeZone));

    /// <summary>The instant of a wall-clock time of the practice.</summary>
    /// <param name="date">The date.</param>
    /// <param name="time">The time of day.</param>
    /// <param name="timeZone">The practice's time zone.</param>
    public static DateTime InstantOf(DateOnly date, TimeOnly time, string timeZone)
    {
        TimeZoneInfo zone = ZoneOf(timeZone);
        DateTime wall = date.ToDateTime(time);
        return TimeZoneInfo.ConvertTimeToUtc(zone.IsInvalidTime(wall) ? wall.AddHours(1) : wall, zone);
    }

    private static TimeZoneInfo ZoneOf(string timeZone) =>
        Find(timeZone) ?? throw new TimeZoneNotFoundException($"There is no time zone {timeZone}.");

    // Where zones are files, small letters are found only once all zones were listed. A practice that was saved then must open after a start, too.
    private static TimeZoneInfo? Find(string timeZone) =>
        TimeZoneInfo.TryFindSystemTimeZoneById(timeZone, out TimeZoneInfo? zone)
            ? zone
            : TimeZoneInfo
                .GetSystemTimeZones()
                .FirstOrDefault(known => string.Equals(known.Id, timeZone, StringComparison.OrdinalIgnoreCase));
}
