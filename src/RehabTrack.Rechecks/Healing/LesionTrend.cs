using RehabTrack.Rechecks.Anatomy;

namespace RehabTrack.Rechecks.Healing;

/// <summary>The trend of one lesion.</summary>
/// <param name="Lesion">The lesion's name; null for the case's one lesion without a name.</param>
/// <param name="Part">The part it lies in.</param>
/// <param name="Trend">Its trend.</param>
public sealed record LesionTrend(string? Lesion, Part Part, Trend Trend);
