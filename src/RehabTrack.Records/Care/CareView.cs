using RehabTrack.Rechecks.Care;

namespace RehabTrack.Records.Care;

/// <summary>A treatment, medicine or sign with who entered it.</summary>
public sealed record CareView
{
    /// <summary>Identity.</summary>
    public required Guid Id { get; init; }

    /// <summary>Version token.</summary>
    public required Guid Version { get; init; }

    /// <summary>What it says.</summary>
    public required CareEntry Entry { get; init; }

    /// <summary>Who entered it.</summary>
    public required string EnteredBy { get; init; }

    /// <summary>When (UTC).</summary>
    public required DateTime EnteredAt { get; init; }

    /// <summary>Who corrected it last; null when nobody did.</summary>
    public required string? CorrectedBy { get; init; }

    /// <summary>When (UTC).</summary>
    public required DateTime? CorrectedAt { get; init; }

    /// <summary>The vet who set the stand-down date.</summary>
    public required string? StandDownBy { get; init; }
}
