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
}
