using RehabTrack.Rechecks.Suggestions;

namespace RehabTrack.Records.Exercise;

/// <summary>What a decision rested on, kept with it.</summary>
public sealed record DecisionGround
{
    /// <summary>What the visit found.</summary>
    public required Visit Visit { get; init; }

    /// <summary>The step up that the rules were asked about.</summary>
    public required AskedStep Asked { get; init; }

    /// <summary>What the rules suggested over all open cases: the move that outranks the others. Null without an open case.</summary>
    public SuggestedMove? Suggested { get; init; }

    /// <summary>One an open case.</summary>
    public required IReadOnlyList<CaseGround> Cases { get; init; }
}
