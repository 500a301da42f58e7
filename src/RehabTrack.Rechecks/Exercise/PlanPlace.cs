namespace RehabTrack.Rechecks.Exercise;

/// <summary>Where a horse stands in a plan.</summary>
/// <param name="Step">The step, from 0.</param>
/// <param name="Days">Effective days spent in the step, from 0; week n of a step is day 7n to 7n + 6.</param>
public readonly record struct PlanPlace(int Step, int Days) : IComparable<PlanPlace>
{
    /// <summary>The first day of the first step.</summary>
    public static PlanPlace Start => default;

    /// <summary>The week of effective time in the step, from 0.</summary>
    public int Week => Days / PlanRows.DaysOfWeek;

    /// <summary>Whether one place comes before another.</summary>
    public static bool operator <(PlanPlace left, PlanPlace right) => left.CompareTo(right) < 0;

    /// <summary>Whether one place comes after another.</summary>
    public static bool operator >(PlanPlace left, PlanPlace right) => left.CompareTo(right) > 0;

    /// <summary>Whether one place comes before another or is the same.</summary>
    public static bool operator <=(PlanPlace left, PlanPlace right) => left.CompareTo(right) <= 0;

    /// <summary>Whether one place comes after another or is the same.</summary>
    public static bool operator >=(PlanPlace left, PlanPlace right) => left.CompareTo(right) >= 0;

    /// <summary>By step, then by day.</summary>
    public int CompareTo(PlanPlace other) => (Step, Days).CompareTo((other.Step, other.Days));
}
