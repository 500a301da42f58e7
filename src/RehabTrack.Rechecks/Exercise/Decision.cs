namespace RehabTrack.Rechecks.Exercise;

/// <summary>What a vet decides on a visit, with its parameters. A correction is a new decision.</summary>
public sealed record Decision
{
    /// <summary>The kind.</summary>
    public required DecisionKind Kind { get; init; }

    /// <summary>The plan version it was signed on. On another version than the one in force it can only lower.</summary>
    public required string PlanVersionId { get; init; }

    /// <summary>The first day it counts for. It raises nothing before the day it was recorded.</summary>
    public required DateOnly From { get; init; }

    /// <summary>Where the horse is placed: needed for advance and step back, without meaning for the others.</summary>
    public PlanPlace? Place { get; init; }

    /// <summary>Lower ceilings than the plan's; null for the plan's own.</summary>
    public OutingLimits? Limits { get; init; }

    /// <summary>The last day it is valid, after which the floor holds; for a pause its last day. Null is until the next decision.</summary>
    public DateOnly? ValidUntil { get; init; }

    /// <summary>When the horse is to be seen again. On that day growth stops.</summary>
    public DateOnly? RecheckDate { get; init; }

    /// <summary>The work signed for bad days from now on; null leaves the one signed before.</summary>
    public Work? Floor { get; init; }

    /// <summary>Why, in the vet's words.</summary>
    public string Reason { get; init; } = "";

    /// <summary>Who signed.</summary>
    public string SignedBy { get; init; } = "";
}
