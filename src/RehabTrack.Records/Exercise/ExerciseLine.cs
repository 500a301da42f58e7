using RehabTrack.Rechecks.Permits;

namespace RehabTrack.Records.Exercise;

/// <summary>One line of a horse's exercise history with who wrote it.</summary>
public sealed record ExerciseLine
{
    /// <summary>Identity.</summary>
    public required Guid Id { get; init; }

    /// <summary>Its number among the horse's lines, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>What it says.</summary>
    public required PermitEntry Entry { get; init; }

    /// <summary>The day it speaks of, or from which it counts.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>When it was written (UTC).</summary>
    public required DateTime RecordedAt { get; init; }

    /// <summary>Who wrote it.</summary>
    public required string EnteredBy { get; init; }

    /// <summary>For whom somebody of the practice wrote it; null when the person wrote it.</summary>
    public required string? OnBehalfOf { get; init; }

    /// <summary>The words of a log or concern; null for every other line.</summary>
    public required LogWords? Words { get; init; }
}
