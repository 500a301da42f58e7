using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Rechecks.Healing;

/// <summary>What one examination says of a lesion on one track; the default is "not read".</summary>
/// <param name="IsRead">Whether the track has a place at the examination.</param>
/// <param name="Kind">What is known of the area there.</param>
/// <param name="Area">The area, cm², when measured.</param>
/// <param name="StandardDeviation">Its SD, cm², gain not included.</param>
/// <param name="IsUncertain">Whether the link is uncertain.</param>
/// <param name="IsAbnormal">Whether the lesion shows there.</param>
internal readonly record struct LesionCell(
    bool IsRead,
    LesionAreaKind Kind,
    double Area,
    double StandardDeviation,
    bool IsUncertain,
    bool IsAbnormal
)
{
    public bool IsKnown => IsRead && Kind == LesionAreaKind.Measured;

    public bool IsDiffuse => IsRead && Kind == LesionAreaKind.Diffuse;
}
