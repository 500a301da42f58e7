using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Examinations;

namespace RehabTrack.Records.Referrals;

/// <summary>A signed examination as a report tells it, with what follows from its readings.</summary>
public sealed record ReportExamination
{
    /// <summary>The practice's date of the visit.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>How the limb stood.</summary>
    public required Stance Stance { get; init; }

    /// <summary>Who examined; null when not recorded.</summary>
    public string? Examiner { get; init; }

    /// <summary>Transducer in words; null when not recorded.</summary>
    public string? Transducer { get; init; }

    /// <summary>Where the tape starts; null for the case's landmark.</summary>
    public Landmark? Landmark { get; init; }

    /// <summary>The scheme when levels are zones; null when they are read off a tape.</summary>
    public ZoneScheme? Zones { get; init; }

    /// <summary>Who signed.</summary>
    public required string SignedBy { get; init; }

    /// <summary>The readings, without notes and without who measured.</summary>
    public required IReadOnlyList<DraftReading> Readings { get; init; }

    /// <summary>Lesion volume, cm³; null when it cannot be computed.</summary>
    public double? VolumeCm3 { get; init; }

    /// <summary>The largest share at a level, %; null when none was read.</summary>
    public double? WorstPercent { get; init; }

    /// <summary>All lesion areas of all ligament areas, %; null when no level has both.</summary>
    public double? TotalPercent { get; init; }

    /// <summary>Length of the lesion, cm; null when none is seen or it cannot be told.</summary>
    public double? LesionLengthCm { get; init; }
}
