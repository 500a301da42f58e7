using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Rechecks.Permits;

/// <summary>A vet signed a plan version, from a date, and placed the horse in it.</summary>
public sealed record PlanSigned : PermitEntry
{
    /// <summary>The version.</summary>
    public required PlanVersion Plan { get; init; }

    /// <summary>The first day it counts for. It raises nothing before the day it was recorded.</summary>
    public required DateOnly From { get; init; }

    /// <summary>Where the horse is placed.</summary>
    public PlanPlace Place { get; init; }

    /// <summary>
    /// Whether it is signed as an advance too. Any increase is an advance: without it the new version permits at most what the old one
    /// did on the day before, and a first plan permits nothing.
    /// </summary>
    public required bool IsAdvance { get; init; }

    /// <summary>When the horse is to be seen again at the latest; null for the gate's own date.</summary>
    public DateOnly? RecheckDate { get; init; }

    /// <summary>Who signed.</summary>
    public string SignedBy { get; init; } = "";
}
