using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Records.Imports;

/// <summary>What a file would bring of one case.</summary>
public sealed record CasePreview
{
    /// <summary>The file's name of the case.</summary>
    public required string Label { get; init; }

    /// <summary>The file's name of the horse; the label where it gives none.</summary>
    public required string HorseName { get; init; }

    /// <summary>Whether it is left out by choice.</summary>
    public required bool Skipped { get; init; }

    /// <summary>The horse here; null for a new one, or while it must be chosen.</summary>
    public required Guid? HorseId { get; init; }

    /// <summary>The case here; null for a new one.</summary>
    public required Guid? CaseId { get; init; }

    /// <summary>Whether a person must say which horse it is before anything can be imported.</summary>
    public required bool MustChooseHorse { get; init; }

    /// <summary>Horses here that may be the same, most alike first.</summary>
    public required IReadOnlyList<HorseCandidate> MayBeSame { get; init; }

    /// <summary>Open cases of that horse, of the same limb and structure, that may be the same; empty when the label is known.</summary>
    public required IReadOnlyList<Guid> MayBeSameCase { get; init; }

    /// <summary>Limb, structure, landmark or onset that differ: left as they are unless chosen.</summary>
    public required IReadOnlyList<FieldDifference> Differences { get; init; }

    /// <summary>Its examinations, by date.</summary>
    public required IReadOnlyList<ExaminationPreview> Examinations { get; init; }

    /// <summary>What keeps it from being imported.</summary>
    public required IReadOnlyList<Problem> Problems { get; init; }
}
