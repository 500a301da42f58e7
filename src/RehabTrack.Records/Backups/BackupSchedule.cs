using RehabTrack.Records.Room;

namespace RehabTrack.Records.Backups;

/// <summary>When a backup is due: once a day, by the practice's clock; one that was missed is due at once.</summary>
public static class BackupSchedule
{
    /// <summary>The latest moment at which one was due.</summary>
    /// <param name="now">UTC.</param>
    /// <param name="at">The time of day.</param>
    /// <param name="timeZone">The practice's time zone.</param>
    public static DateTime LastDue(DateTime now, TimeOnly at, string timeZone)
    {
        DateOnly today = PracticeTime.DateOf(now, timeZone);
        DateTime due = PracticeTime.InstantOf(today, at, timeZone);
        return due <= now ? due : PracticeTime.InstantOf(today.AddDays(-1), at, timeZone);
    }

    /// <summary>The next moment at which one is due.</summary>
    /// <param name="now">UTC.</param>
    /// <param name="at">The time of day.</param>
    /// <param name="timeZone">The practice's time zone.</param>
    public static DateTime NextDue(DateTime now, TimeOnly at, string timeZone)
    {
        DateOnly today = PracticeTime.DateOf(now, timeZone);
        DateTime due = PracticeTime.InstantOf(today, at, timeZone);
        return due > now ? due : PracticeTime.InstantOf(today.AddDays(1), at, timeZone);
    }
}
