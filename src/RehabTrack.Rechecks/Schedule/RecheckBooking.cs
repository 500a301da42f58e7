namespace RehabTrack.Rechecks.Schedule;

/// <summary>The day that was booked for a recheck.</summary>
/// <param name="Date">The booked day, a calendar date of the practice.</param>
/// <param name="After">The last examination of the case when the day was booked; null when there was none. It cannot be the booked one.</param>
public sealed record RecheckBooking(DateOnly Date, DateOnly? After)
{
    /// <summary>Whether an examination is the booked one.</summary>
    /// <param name="examined">The day of the examination; null when there is none.</param>
    /// <param name="settings">How many days before the booked day still count.</param>
    /// <returns>True for an examination later than the one the booking follows, on the booked day, after it, or a few days before.</returns>
    public bool IsServedBy(DateOnly? examined, ScheduleSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return examined is { } day && !(day <= After) && Date.DayNumber - day.DayNumber <= settings.EarlyDays;
    }

    /// <summary>Whether somebody examined on the booked day or the few days before it that still count; an examination after it came late.</summary>
    /// <param name="examined">The days of the examinations of the case.</param>
    /// <param name="settings">How many days before the booked day still count.</param>
    public bool WasKept(IEnumerable<DateOnly> examined, ScheduleSettings settings) =>
        examined.Any(day => day <= Date && IsServedBy(day, settings));
}
