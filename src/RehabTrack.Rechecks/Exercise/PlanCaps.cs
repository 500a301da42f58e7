namespace RehabTrack.Rechecks.Exercise;

/// <summary>The most minutes of a plan, all gaits together, whatever its steps say. Null is no cap.</summary>
/// <param name="OutingMinutes">Most of one outing, min.</param>
/// <param name="DayMinutes">Most of a day, min.</param>
/// <param name="WeekMinutes">Most of a week, min.</param>
public sealed record PlanCaps(int? OutingMinutes = null, int? DayMinutes = null, int? WeekMinutes = null)
{
    /// <summary>No cap.</summary>
    public static PlanCaps None { get; } = new();

    /// <summary>
    /// The work with the caps put on; no component rises. The outing is cut first, the fastest gait before the slower; then the outings
    /// of a day, then the days of a week; what still exceeds is cut from the outing.
    /// </summary>
    /// <param name="work">The work of a step.</param>
    public Work On(Work work)
    {
        ArgumentNullException.ThrowIfNull(work);
        int outing = Math.Min(OutingMinutes ?? int.MaxValue, Math.Min(DayMinutes ?? int.MaxValue, WeekMinutes ?? int.MaxValue));
        Work capped = work with { Outing = work.Outing.CutTo(outing) };
        if (!capped.HasOuting)
        {
            return capped.Settled();
        }

        if (Math.Min(DayMinutes ?? int.MaxValue, WeekMinutes ?? int.MaxValue) is var day and < int.MaxValue)
        {
            capped = capped with { OutingsADay = Math.Min(capped.OutingsADay, day / capped.Outing.Total) };
        }

        if (WeekMinutes is { } week)
        {
            capped = capped with { DaysAWeek = Math.Min(capped.DaysAWeek, week / capped.Day.Total) };
        }

        return capped.Settled();
    }
}
