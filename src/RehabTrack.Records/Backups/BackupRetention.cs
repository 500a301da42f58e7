using System.Globalization;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Backups;

/// <summary>
/// Which backups are kept. Days and weeks in which there is none are not counted: after a long absence the old ones are still there.
/// </summary>
public static class BackupRetention
{
    /// <summary>Those that may go: made by themselves, and neither the newest, nor the last of a kept day or week.</summary>
    /// <param name="copies">All that are there.</param>
    /// <param name="settings">How many are kept.</param>
    /// <param name="timeZone">The practice's time zone, whose days count.</param>
    public static IReadOnlyList<BackupCopy> Superfluous(IEnumerable<BackupCopy> copies, BackupSettings settings, string timeZone)
    {
        ArgumentNullException.ThrowIfNull(settings);
        BackupCopy[] own = [.. copies.Where(copy => !copy.ByHand).OrderByDescending(copy => copy.At)];
        DateOnly Day(BackupCopy copy) => PracticeTime.DateOf(copy.At, timeZone);
        (int, int) Week(BackupCopy copy)
        {
            DateTime day = Day(copy).ToDateTime(TimeOnly.MinValue);
            return (ISOWeek.GetYear(day), ISOWeek.GetWeekOfYear(day));
        }

        HashSet<BackupCopy> kept =
        [
            .. own.Take(1),
            .. own.DistinctBy(Day).Take(settings.KeepDaily),
            .. own.DistinctBy(Week).Take(settings.KeepWeekly),
        ];
        return [.. own.Where(copy => !kept.Contains(copy))];
    }
}
