using System.Globalization;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Schedule;

/// <summary>What a booked recheck must keep to.</summary>
public static class BookingRules
{
    /// <summary>All that is wrong with a booking; empty when it can be kept.</summary>
    /// <param name="date">The day to be booked.</param>
    /// <param name="minutes">How long it takes; more than 0, at most the setting.</param>
    /// <param name="lastExamination">The last examination of the case, whoever made it; null when there is none. A recheck comes after it.</param>
    /// <param name="settings">The limits.</param>
    /// <param name="today">The practice's calendar date; nothing is booked before it.</param>
    public static IReadOnlyList<Problem> Check(
        DateOnly date,
        int minutes,
        DateOnly? lastExamination,
        ScheduleSettings settings,
        DateOnly today
    )
    {
        ArgumentNullException.ThrowIfNull(settings);
        List<Problem> problems = [];
        if (date <= lastExamination)
        {
            problems.Add(new("date", "recheck-before-last-examination", Text(date), Text(lastExamination.Value)));
        }
        else if (date < today)
        {
            problems.Add(new("date", "recheck-in-the-past", Text(date), Text(today)));
        }
        else if (date.DayNumber - today.DayNumber > settings.FurthestDays)
        {
            problems.Add(new("date", "recheck-too-far", Text(date), Text(today.AddDays(settings.FurthestDays))));
        }

        if (minutes < 1 || minutes > settings.LongestVisitMinutes)
        {
            problems.Add(new("minutes", "visit-minutes-out-of-range", Text(minutes), "1", Text(settings.LongestVisitMinutes)));
        }

        return problems;
    }

    /// <summary>What is wrong with an interval between rechecks; empty when it can be kept, or when there is none.</summary>
    /// <param name="days">The interval; null when there is none.</param>
    /// <param name="settings">The limits.</param>
    public static IReadOnlyList<Problem> CheckInterval(int? days, ScheduleSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return days is { } given && (given < 1 || given > settings.FurthestDays)
            ? [new("recheckIntervalDays", "interval-out-of-range", Text(given), "1", Text(settings.FurthestDays))]
            : [];
    }

    private static string Text(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
