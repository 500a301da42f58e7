namespace RehabTrack.Rechecks.Exercise;

/// <summary>One step of a plan. What is not filled in is null or empty, and permits nothing.</summary>
public sealed record PlanStep
{
    /// <summary>The step's name, for example <c>walk in hand</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Walk of an outing; null is unfilled.</summary>
    public GaitRule? Walk { get; init; }

    /// <summary>Trot of an outing; null is unfilled.</summary>
    public GaitRule? Trot { get; init; }

    /// <summary>Canter of an outing; null is unfilled.</summary>
    public GaitRule? Canter { get; init; }

    /// <summary>Gallop of an outing; null is unfilled.</summary>
    public GaitRule? Gallop { get; init; }

    /// <summary>Outings a day; null is unfilled.</summary>
    public int? OutingsADay { get; init; }

    /// <summary>Days a week with an outing, 0 to 7; null is unfilled.</summary>
    public int? DaysAWeek { get; init; }

    /// <summary>How the horse may be worked; empty is unfilled.</summary>
    public WorkModes Modes { get; init; }

    /// <summary>Whether in circles; null is unfilled, which is straight lines only.</summary>
    public Circles? Circles { get; init; }

    /// <summary>Over which ground; empty is unfilled.</summary>
    public Surfaces Surfaces { get; init; }

    /// <summary>How free the horse may stand; null is unfilled, which is the box.</summary>
    public Turnout? Turnout { get; init; }

    /// <summary>The shortest length of the step, in days of effective time, at least 1.</summary>
    public required int ShortestDays { get; init; }

    /// <summary>The recheck before the next step; null when the next step follows by effective time.</summary>
    public Gate? Gate { get; init; }

    /// <summary>Days from a signed examination to the next recheck while the horse is in this step; null leaves it to case and practice.</summary>
    public int? RecheckIntervalDays { get; init; }

    /// <summary>Words beside the step, for the practice; may be empty.</summary>
    public string Note { get; init; } = "";

    /// <summary>The rule of a gait; null is unfilled.</summary>
    /// <param name="gait">The gait.</param>
    public GaitRule? Of(Gait gait) =>
        gait switch
        {
            Gait.Walk => Walk,
            Gait.Trot => Trot,
            Gait.Canter => Canter,
            Gait.Gallop => Gallop,
        };
}
