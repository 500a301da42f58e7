using RehabTrack.Rechecks.Anatomy;

namespace RehabTrack.Rechecks.Healing;

/// <summary>The trend of one lesion, and its size at each examination.</summary>
/// <param name="Lesion">The lesion's name; null for the case's one lesion without a name.</param>
/// <param name="Part">The part it lies in.</param>
/// <param name="Trend">Its trend.</param>
/// <param name="Burdens">
/// One an examination, ordered by date and id: its own areas over the levels of its path. A lesion alone on its path has those of the path;
/// one of several has no severity, which belongs to all lesions of a path together.
/// </param>
public sealed record LesionTrend(string? Lesion, Part Part, Trend Trend, IReadOnlyList<ExaminationBurden> Burdens);
