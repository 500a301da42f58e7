using RehabTrack.Rechecks.Anatomy;

namespace RehabTrack.Rechecks.Exams;

/// <summary>One ultrasound session of one ligament.</summary>
public sealed record Examination
{
    /// <summary>Opaque identity, unique within the case.</summary>
    public required string Id { get; init; }

    /// <summary>The name that tells two examinations of one date apart; null for the only one.</summary>
    public string? Name { get; init; }

    /// <summary>The practice's calendar date of the visit.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>How the limb stood.</summary>
    public Stance Stance { get; init; }

    /// <summary>What stands behind the examination.</summary>
    public ExaminationState State { get; init; } = ExaminationState.Signed;

    /// <summary>Who examined; null when not recorded.</summary>
    public string? Examiner { get; init; }

    /// <summary>Transducer kind and frequency in words; null when not recorded.</summary>
    public string? Transducer { get; init; }

    /// <summary>Where this examination's tape starts, when it is not the case's landmark; null takes the case's.</summary>
    public Landmark? Landmark { get; init; }

    /// <summary>The scheme when levels are zones; its landmark then stands for the examination's. Null when levels are read off a tape.</summary>
    public ZoneScheme? Zones { get; init; }

    /// <summary>Fixed points of the ligament seen on this day, at most one of a kind, in any order; none when levels are zones.</summary>
    public IReadOnlyList<FixedPoint> FixedPoints { get; init; } = [];

    /// <summary>The readings, in any order.</summary>
    public required IReadOnlyList<Reading> Readings { get; init; }
}
