namespace RehabTrack.Records.Exercise;

/// <summary>A concern as the practice works through it.</summary>
public sealed record ConcernView
{
    /// <summary>Identity.</summary>
    public required Guid Id { get; init; }

    /// <summary>Version token.</summary>
    public required Guid Version { get; init; }

    /// <summary>The line that opened it.</summary>
    public required ExerciseLine Line { get; init; }

    /// <summary>When it was opened (UTC).</summary>
    public required DateTime OpenedAt { get; init; }

    /// <summary>Who of the practice saw it first; null while nobody did.</summary>
    public required string? SeenBy { get; init; }

    /// <summary>When (UTC).</summary>
    public required DateTime? SeenAt { get; init; }

    /// <summary>Whether a vet signed a decision after it.</summary>
    public required bool IsAnswered { get; init; }

    /// <summary>When the trainer last opened the page of the horse since; null when not since it was opened (UTC).</summary>
    public required DateTime? TrainerLookedAt { get; init; }
}
