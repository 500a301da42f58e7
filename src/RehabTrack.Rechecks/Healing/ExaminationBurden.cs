using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Healing;

/// <summary>The size of the injury, of a part of it, or of one lesion, at one examination.</summary>
public sealed record ExaminationBurden
{
    /// <summary>The examination.</summary>
    public required string ExaminationId { get; init; }

    /// <summary>Its date.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Lesion volume over the common window of consensus positions; null when it cannot be computed, and by zones without a zone length measured on the horse.</summary>
    public required CubicCentimetres? Volume { get; init; }

    /// <summary>Standard error of the volume, cm³, as if one person had measured throughout.</summary>
    public required CubicCentimetres? VolumeStandardError { get; init; }

    /// <summary>Whether an end level still shows lesion, so that the volume is a lower bound.</summary>
    public required bool VolumeIsLowerBound { get; init; }

    /// <summary>100·Σlesion/Σligament over all levels of the structure, or of the path; null when no level has both areas.</summary>
    public required Percent? TotalPercent { get; init; }

    /// <summary>Whether every track that this case follows was read here with both areas.</summary>
    public required bool LevelsComplete { get; init; }

    /// <summary>
    /// Severity: of the worst section where branches alone show lesion, of the total percent where none of them does and levels are
    /// complete; null otherwise, and for one of several lesions of a path.
    /// </summary>
    public required SeverityGrade? Severity { get; init; }

    /// <summary>The largest share at a level.</summary>
    public required Percent? WorstPercent { get; init; }

    /// <summary>The level of the largest share, on that day's tape, or the zone.</summary>
    public required Level? WorstLevel { get; init; }

    /// <summary>From first to last abnormal level plus half-gaps to the normal levels beside them; null without an abnormal level, and by zones without a measured zone length.</summary>
    public required Centimetres? LesionLength { get; init; }

    /// <summary>Sum of echogenicity grades over the levels graded; null when none was.</summary>
    public required int? EchogenicitySum { get; init; }

    /// <summary>Sum of fibre-alignment grades over the levels graded; null when none was.</summary>
    public required int? FibreAlignmentSum { get; init; }

    /// <summary>Tracks that showed lesion before and were not read here, or whose link here is uncertain.</summary>
    public required IReadOnlyList<string> LesionTracksMissed { get; init; }
}
