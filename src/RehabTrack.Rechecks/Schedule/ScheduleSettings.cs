using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Schedule;

/// <summary>The rhythm of rechecks; defaults and sources stand in <c>shared/schedule.json</c>.</summary>
public sealed record ScheduleSettings
{
    private static readonly ReferenceTable Table = ReferenceTable.Load("schedule");

    /// <summary>Days from a signed examination to the next recheck.</summary>
    public int IntervalDays { get; init; } = (int)Table["intervalDays"];

    /// <summary>A recheck within these days counts as due soon.</summary>
    public int SoonDays { get; init; } = (int)Table["soonDays"];

    /// <summary>Days for which a recheck that was done counts as done lately.</summary>
    public int DoneDays { get; init; } = (int)Table["doneDays"];

    /// <summary>An examination up to this many days before the booked day is the booked one; a longer way before it is another.</summary>
    public int EarlyDays { get; init; } = (int)Table["earlyDays"];

    /// <summary>Furthest day ahead that can be booked, and the longest interval, in days.</summary>
    public int FurthestDays { get; init; } = (int)Table["furthestDays"];

    /// <summary>Minutes a booked recheck takes when nothing else is said.</summary>
    public int VisitMinutes { get; init; } = (int)Table["visitMinutes"];

    /// <summary>Most minutes that can be booked for one recheck.</summary>
    public int LongestVisitMinutes { get; init; } = (int)Table["longestVisitMinutes"];

    /// <summary>These settings with the interval that counts for one case.</summary>
    /// <param name="practice">The practice's own interval in days; null takes the table's.</param>
    /// <param name="ofCase">The case's own; null when it has none.</param>
    /// <param name="step">The interval signed with the step of the plan the horse is in; null when it has none.</param>
    /// <remarks>
    /// Where case or step say something, the shorter of the two counts and the practice's does not: what was said of this horse goes
    /// before the house rule, and of two such words the more careful one holds.
    /// </remarks>
    public ScheduleSettings For(int? practice, int? ofCase, int? step = null) =>
        this with
        {
            IntervalDays = ofCase is { } one && step is { } other ? Math.Min(one, other) : ofCase ?? step ?? practice ?? IntervalDays,
        };
}
