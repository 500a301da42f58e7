using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Web.Features.Examinations;

/// <summary>A place that the examination being entered and the last one have both read.</summary>
/// <param name="Track">The place.</param>
/// <param name="Now">Its reading now.</param>
/// <param name="Changes">What changed, size by size.</param>
public sealed record ChangeRow(Track Track, TrackStep Now, IReadOnlyList<SizeChange> Changes);
