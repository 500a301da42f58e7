using RehabTrack.Rechecks.Permits;

namespace RehabTrack.Records.Exercise;

/// <summary>What a trainer sees of a horse: the permit of today, and what was released. Nothing else of it leaves the practice.</summary>
public sealed record YardHorse
{
    /// <summary>The horse.</summary>
    public required Guid Id { get; init; }

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>Its markings, to tell it apart in the yard; null when not recorded.</summary>
    public required string? Markings { get; init; }

    /// <summary>The limbs of its open cases, in their order.</summary>
    public required IReadOnlyList<Rechecks.Anatomy.Limb> Limbs { get; init; }

    /// <summary>Whether there is a photo.</summary>
    public required bool HasPhoto { get; init; }

    /// <summary>The yard it stands in.</summary>
    public required string? Yard { get; init; }

    /// <summary>What is permitted today.</summary>
    public required Permit Permit { get; init; }

    /// <summary>Number of the plan version, for a print; null when nothing is signed.</summary>
    public int? PlanNumber => Permit.Source?.PlanNumber;

    /// <summary>The logs of today, oldest first.</summary>
    public required IReadOnlyList<DayLog> LoggedToday { get; init; }

    /// <summary>The latest concern that no vet has answered yet; null when there is none.</summary>
    public required OpenConcern? Concern { get; init; }

    /// <summary>What was released to the reader, as far as it may be read today.</summary>
    public required YardRelease Release { get; init; }

    /// <summary>The next recheck; null when none is booked or due.</summary>
    public required YardRecheck? Recheck { get; init; }
}
