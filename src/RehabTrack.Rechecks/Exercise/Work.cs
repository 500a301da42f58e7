namespace RehabTrack.Rechecks.Exercise;

/// <summary>
/// Work as it is permitted, done at most or signed for bad days: the outing, how often, how, where, and how the horse stands. Every
/// component can be compared, and the lesser of two works is taken component by component.
/// </summary>
public sealed record Work
{
    /// <summary>No outing, in the box.</summary>
    public static Work None { get; } = new();

    /// <summary>Minutes of one outing by gait.</summary>
    public OutingMinutes Outing { get; init; }

    /// <summary>Outings a day, at least 0.</summary>
    public int OutingsADay { get; init; }

    /// <summary>Days a week with an outing, 0 to 7.</summary>
    public int DaysAWeek { get; init; }

    /// <summary>How the horse may be worked.</summary>
    public WorkModes Modes { get; init; }

    /// <summary>Whether in circles.</summary>
    public Circles Circles { get; init; }

    /// <summary>Over which ground.</summary>
    public Surfaces Surfaces { get; init; }

    /// <summary>How free the horse may stand.</summary>
    public Turnout Turnout { get; init; }

    /// <summary>Minutes of a day by gait: one outing times outings a day.</summary>
    public OutingMinutes Day => OutingsADay * Outing;

    /// <summary>Whether there is an outing at all: minutes, outings, days, a mode and a surface.</summary>
    public bool HasOuting => Outing.Total > 0 && OutingsADay > 0 && DaysAWeek > 0 && Modes != WorkModes.None && Surfaces != Surfaces.None;

    /// <summary>The lesser of two works, component by component. Where nothing is left of an outing, nothing of it is named.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    public static Work Least(Work left, Work right)
    {
        ArgumentNullException.ThrowIfNull(left);
        ArgumentNullException.ThrowIfNull(right);
        return new Work
        {
            Outing = OutingMinutes.Least(left.Outing, right.Outing),
            OutingsADay = Math.Min(left.OutingsADay, right.OutingsADay),
            DaysAWeek = Math.Min(left.DaysAWeek, right.DaysAWeek),
            Modes = left.Modes & right.Modes,
            Circles = (Circles)Math.Min((int)left.Circles, (int)right.Circles),
            Surfaces = left.Surfaces & right.Surfaces,
            Turnout = (Turnout)Math.Min((int)left.Turnout, (int)right.Turnout),
        }.Settled();
    }

    /// <summary>Whether no component is above the other's.</summary>
    /// <param name="other">The work it is held against.</param>
    public bool IsWithin(Work other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Outing.IsWithin(other.Outing)
            && OutingsADay <= other.OutingsADay
            && DaysAWeek <= other.DaysAWeek
            && (Modes & ~other.Modes) == WorkModes.None
            && Circles <= other.Circles
            && (Surfaces & ~other.Surfaces) == Surfaces.None
            && Turnout <= other.Turnout;
    }

    /// <summary>The same work; where it has no outing, only the turnout is left.</summary>
    public Work Settled() => HasOuting ? this : new Work { Turnout = Turnout };
}
