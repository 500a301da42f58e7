using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Findings;

/// <summary>What a person must be told, as a code with typed arguments; the sentence is made in Wording.</summary>
public sealed record Finding
{
    /// <summary>What it is.</summary>
    public required FindingKind Kind { get; init; }

    /// <summary>How much it asks.</summary>
    public required FindingSeverity Severity { get; init; }

    /// <summary>The examination it speaks of; null when it speaks of the course.</summary>
    public string? ExaminationId { get; init; }

    /// <summary>The date since when, or of that examination.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>The earlier date compared with.</summary>
    public DateOnly? ComparedWith { get; init; }

    /// <summary>The part.</summary>
    public Part? Part { get; init; }

    /// <summary>The level on that day's tape, or the zone.</summary>
    public Level? Level { get; init; }

    /// <summary>The track.</summary>
    public string? TrackId { get; init; }

    /// <summary>The lesion's name.</summary>
    public string? Lesion { get; init; }

    /// <summary>A change, %.</summary>
    public double? ChangePercent { get; init; }

    /// <summary>The smallest detectable change it was judged against, %.</summary>
    public double? DetectablePercent { get; init; }

    /// <summary>Whether the change lies inside the measurement error: "may be measurement error: measure again".</summary>
    public bool MayBeMeasurementError { get; init; }

    /// <summary>
    /// Probability of the link it rests on, 0 to 1, null when the link is sure; for fibre alignment, that it truly is worse.
    /// </summary>
    public double? Probability { get; init; }

    /// <summary>A length, cm: a tape shift.</summary>
    public Centimetres? Length { get; init; }

    /// <summary>A count.</summary>
    public int? Count { get; init; }

    /// <summary>The other levels a place may belong to, in the first examination's tape, or zones.</summary>
    public IReadOnlyList<Level> OtherLevels { get; init; } = [];

    /// <summary>Names of persons, for a changed measurer: before, then now.</summary>
    public IReadOnlyList<string> Persons { get; init; } = [];

    /// <summary>Whether it speaks of an examination before the latest: history, shown apart from what needs a person now.</summary>
    public bool IsEarlier { get; init; }
}
