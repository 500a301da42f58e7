using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Rechecks.Healing;

/// <summary>What one examination says of a lesion on one track; the default is "not read".</summary>
/// <param name="IsRead">Whether the track has a place at the examination.</param>
/// <param name="Kind">What is known of the area there.</param>
/// <param name="Area">The area, cm², when measured.</param>
/// <param name="StandardDeviation">Its SD, cm², gain not included, as if one person had measured throughout.</param>
/// <param name="IsUncertain">Whether the link is uncertain.</param>
/// <param name="IsAbnormal">Whether the lesion shows there.</param>
/// <param name="Share">The lesion's share of the ligament, %, where it was recorded or follows from the areas.</param>
/// <param name="LinkProbability">Probability that the place belongs to the track, 0 to 1.</param>
internal readonly record struct LesionCell(
    bool IsRead,
    LesionAreaKind Kind,
    double Area,
    double StandardDeviation,
    bool IsUncertain,
    bool IsAbnormal,
    double? Share,
    double LinkProbability
)
{
    public bool IsKnown => IsRead && Kind == LesionAreaKind.Measured;

    /// <summary>Whether its size was assessed: an area, or at least a share.</summary>
    public bool IsAssessed => IsKnown || (IsRead && Kind == LesionAreaKind.Unknown && Share is not null);

    /// <summary>
    /// By which levels of a lesion are ranked: the area, else the share of a ligament of 1 cm²; a lesion that cannot be outlined may be
    /// the largest.
    /// </summary>
    public double Rank =>
        IsKnown ? Area
        : IsAssessed ? Share!.Value / 100
        : IsAbnormal ? double.MaxValue
        : 0;

    public bool IsDiffuse => IsRead && Kind == LesionAreaKind.Diffuse;
}
