namespace RehabTrack.Records.Exercise;

/// <summary>A concern that no vet has answered with a signature, as the person who asks has to do with it.</summary>
public sealed record WaitingConcern
{
    /// <summary>Identity.</summary>
    public required Guid Id { get; init; }

    /// <summary>Version token.</summary>
    public required Guid Version { get; init; }

    /// <summary>The horse.</summary>
    public required Guid HorseId { get; init; }

    /// <summary>Its name.</summary>
    public required string HorseName { get; init; }

    /// <summary>The yard it stands in; null when not given.</summary>
    public required string? Yard { get; init; }

    /// <summary>The line that opened it.</summary>
    public required ExerciseLine Line { get; init; }

    /// <summary>When it was opened (UTC).</summary>
    public required DateTime OpenedAt { get; init; }

    /// <summary>Who of the practice saw it first; null while nobody did.</summary>
    public required string? SeenBy { get; init; }

    /// <summary>When (UTC).</summary>
    public required DateTime? SeenAt { get; init; }

    /// <summary>The vets who are responsible for its open cases, with who stands in for them today.</summary>
    public required IReadOnlyList<ConcernVet> Vets { get; init; }

    /// <summary>Whether it is for the person who asks: as the responsible vet, or standing in for one.</summary>
    public required bool IsForReader { get; init; }
}
