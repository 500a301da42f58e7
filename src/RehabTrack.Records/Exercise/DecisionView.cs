namespace RehabTrack.Records.Exercise;

/// <summary>A signed decision with what it rested on and what was released of it.</summary>
public sealed record DecisionView
{
    /// <summary>Identity.</summary>
    public required Guid Id { get; init; }

    /// <summary>Version token.</summary>
    public required Guid Version { get; init; }

    /// <summary>The line of the history that holds the decision.</summary>
    public required ExerciseLine Line { get; init; }

    /// <summary>What it rested on.</summary>
    public required DecisionGround Ground { get; init; }

    /// <summary>Why the vet decided otherwise than suggested; null when as suggested.</summary>
    public required string? Disagreement { get; init; }

    /// <summary>The decision that this one corrects; null when it corrects none.</summary>
    public required Guid? CorrectsId { get; init; }

    /// <summary>What owner and trainer read; null until released.</summary>
    public required Release? Release { get; init; }

    /// <summary>When it was released (UTC); null until then.</summary>
    public required DateTime? ReleasedAt { get; init; }
}
