using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Suggestions;

/// <summary>What the worst level says for an advance: one place at two dates.</summary>
public sealed record LevelEvidence
{
    /// <summary>The track.</summary>
    public required string TrackId { get; init; }

    /// <summary>The part.</summary>
    public required Part Part { get; init; }

    /// <summary>The level on the later day's tape, or the zone.</summary>
    public required Level Level { get; init; }

    /// <summary>The earlier date.</summary>
    public required DateOnly From { get; init; }

    /// <summary>The later date.</summary>
    public required DateOnly To { get; init; }

    /// <summary>The lesion area, or its share where only that was recorded, against its error; null when not read at both dates.</summary>
    public required SizeChange? Lesion { get; init; }

    /// <summary>Upper one-sided 95 % bound of the lesion's change, %; null when it cannot be given.</summary>
    public required double? LesionAtMostPercent { get; init; }

    /// <summary>The ligament area against its error; null when not read at both dates.</summary>
    public required SizeChange? Ligament { get; init; }

    /// <summary>Upper one-sided 95 % bound of the ligament's change, %; null when it cannot be given.</summary>
    public required double? LigamentAtMostPercent { get; init; }

    /// <summary>Echogenicity at both dates, on one scale; null otherwise.</summary>
    public required (Grade Before, Grade Now)? Echogenicity { get; init; }

    /// <summary>Fibre alignment at both dates, on one scale; null otherwise.</summary>
    public required (Grade Before, Grade Now)? FibreAlignment { get; init; }

    /// <summary>Echogenicity at the later date; null when not graded.</summary>
    public required Grade? EchogenicityNow { get; init; }

    /// <summary>Fibre alignment at the later date; null when not graded.</summary>
    public required Grade? FibreAlignmentNow { get; init; }
}
