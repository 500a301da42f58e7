using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Records.Examinations;

/// <summary>What is entered of an examination.</summary>
public sealed record ExaminationContent
{
    /// <summary>The practice's date of the visit.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Tells two of one date apart; null for the only one.</summary>
    public string? Name { get; init; }

    /// <summary>Stance.</summary>
    public Stance Stance { get; init; }

    /// <summary>Who examined.</summary>
    public string? Examiner { get; init; }

    /// <summary>Transducer kind and MHz, in words.</summary>
    public string? Transducer { get; init; }

    /// <summary>Where this examination's tape starts; null takes the case's landmark.</summary>
    public Landmark? Landmark { get; init; }

    /// <summary>The scheme when levels are zones; null when they are read off a tape.</summary>
    public ZoneScheme? Zones { get; init; }

    /// <summary>Fixed points of the ligament that were seen, at most one of a kind.</summary>
    public IReadOnlyList<FixedPoint> FixedPoints { get; init; } = [];

    /// <summary>Whether a standoff was used; null when not recorded.</summary>
    public bool? Standoff { get; init; }

    /// <summary>What carried the sound; null when not recorded.</summary>
    public Coupling? Coupling { get; init; }

    /// <summary>Whether the leg was clipped; null when not recorded.</summary>
    public bool? Clipped { get; init; }

    /// <summary>A note, internal unless released.</summary>
    public string? Note { get; init; }

    /// <summary>The other practice that did it; null when done here.</summary>
    public string? OutsidePractice { get; init; }

    /// <summary>The rows, in the order of entry.</summary>
    public required IReadOnlyList<DraftReading> Readings { get; init; }
}
