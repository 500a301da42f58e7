using RehabTrack.Rechecks.Anatomy;

namespace RehabTrack.Rechecks.Healing;

/// <summary>The size of all that shows on one path, over time.</summary>
/// <param name="Path">The path: origin and body are one, each branch is its own.</param>
/// <param name="Burdens">One an examination, ordered by date and id; total share and severity over the levels of this path alone.</param>
public sealed record PartBurden(LinkPath Path, IReadOnlyList<ExaminationBurden> Burdens);
