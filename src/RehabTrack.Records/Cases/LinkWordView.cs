using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Records.Cases;

/// <summary>A person's word on a link.</summary>
public sealed record LinkWordView
{
    /// <summary>Identity.</summary>
    public required Guid Id { get; init; }

    /// <summary>Version token.</summary>
    public required Guid Version { get; init; }

    /// <summary>What the linker gets.</summary>
    public required LinkConstraint Constraint { get; init; }

    /// <summary>Why.</summary>
    public required string Reason { get; init; }

    /// <summary>Who said it.</summary>
    public required string SaidBy { get; init; }

    /// <summary>When, UTC.</summary>
    public required DateTime SaidAt { get; init; }

    /// <summary>Who took it back; null while it counts.</summary>
    public required string? WithdrawnBy { get; init; }

    /// <summary>When, UTC.</summary>
    public required DateTime? WithdrawnAt { get; init; }

    /// <summary>Why it was taken back.</summary>
    public required string? WithdrawnReason { get; init; }

    /// <summary>Whether both places are still there; an amended examination may have lost one.</summary>
    public required bool Applies { get; init; }
}
