using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Exams;

/// <summary>One injury of one horse followed over time, with its examinations: what the analysis reads.</summary>
public sealed record CaseCourse
{
    /// <summary>Opaque identity of the case.</summary>
    public required string Id { get; init; }

    /// <summary>The limb.</summary>
    public Limb Limb { get; init; }

    /// <summary>The structure.</summary>
    public Structure Structure { get; init; }

    /// <summary>Where the tape starts, unless an examination names another landmark; null when not known.</summary>
    public Landmark? Landmark { get; init; }

    /// <summary>The date of the injury; null when not known.</summary>
    public DateOnly? Onset { get; init; }

    /// <summary>The date of the latest re-injury; null when there was none.</summary>
    public DateOnly? Reinjury { get; init; }

    /// <summary>The vet's target as a share of the first trend examination; null takes the setting.</summary>
    public double? TargetFraction { get; init; }

    /// <summary>What is known of the other limb.</summary>
    public OtherLimb OtherLimb { get; init; }

    /// <summary>The phases of the plan, in any order; empty without a plan.</summary>
    public IReadOnlyList<PlanPhaseStart> PlanPhases { get; init; } = [];

    /// <summary>Distances between landmarks that a vet measured on this horse, in any order.</summary>
    public IReadOnlyList<LandmarkDistance> LandmarkDistances { get; init; } = [];

    /// <summary>The length of a zone that a vet measured on this horse, above 0 cm; without it zones give no length and no volume.</summary>
    public Centimetres? ZoneLength { get; init; }

    /// <summary>The examinations, in any order.</summary>
    public required IReadOnlyList<Examination> Examinations { get; init; }
}
