using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Records.Start;

/// <summary>A decision as signed and released.</summary>
public sealed record DemoDecision
{
    /// <summary>When.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>What was decided.</summary>
    public required DecisionKind Kind { get; init; }

    /// <summary>The step, from 0; null where the kind needs none.</summary>
    public int? Step { get; init; }

    /// <summary>The next recheck; null where the kind needs none.</summary>
    public DateOnly? Recheck { get; init; }

    /// <summary>Why.</summary>
    public required string Reason { get; init; }

    /// <summary>Why otherwise than suggested.</summary>
    public string? Disagreement { get; init; }

    /// <summary>What the owner reads.</summary>
    public required IReadOnlyList<string> Owner { get; init; }

    /// <summary>What the trainer reads.</summary>
    public required IReadOnlyList<string> Trainer { get; init; }
}
