namespace RehabTrack.Rechecks.Exercise;

/// <summary>One version of the plan of a horse: what a vet signs as a whole. A change makes a new version.</summary>
public sealed record PlanVersion
{
    /// <summary>The version's identity; never used twice.</summary>
    public required string Id { get; init; }

    /// <summary>Its number, from 1, for people.</summary>
    public required int Number { get; init; }

    /// <summary>The plan's name.</summary>
    public string Title { get; init; } = "";

    /// <summary>The template it was copied from, by its name; empty when written anew.</summary>
    public string Template { get; init; } = "";

    /// <summary>The steps in order. None permits nothing.</summary>
    public required IReadOnlyList<PlanStep> Steps { get; init; }

    /// <summary>The most minutes whatever the steps say.</summary>
    public PlanCaps Caps { get; init; } = PlanCaps.None;

    /// <summary>The work signed for bad days; null when none was signed, which is none.</summary>
    public Work? Floor { get; init; }
}
