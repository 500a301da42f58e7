using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Records.Cases;

namespace RehabTrack.Records.Horses;

/// <summary>A case in a list.</summary>
public sealed record CaseRow
{
    /// <summary>Identity.</summary>
    public required Guid Id { get; init; }

    /// <summary>The horse.</summary>
    public required Guid HorseId { get; init; }

    /// <summary>Limb.</summary>
    public required Limb Limb { get; init; }

    /// <summary>Structure.</summary>
    public required Structure Structure { get; init; }

    /// <summary>Date of the injury; null when not known.</summary>
    public required DateOnly? Onset { get; init; }

    /// <summary>The name an imported file gave it; null when opened here.</summary>
    public required string? Label { get; init; }

    /// <summary>Whether it is open.</summary>
    public required bool IsOpen { get; init; }

    /// <summary>What the analysis says; null before the first examination is signed or imported.</summary>
    public required CaseSummaryView? Summary { get; init; }
}
