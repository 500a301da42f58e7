using RehabTrack.Rechecks.Anatomy;

namespace RehabTrack.Rechecks.Linking;

/// <summary>The places of successive examinations that the linker holds to be the same place.</summary>
/// <param name="Id">Unique in the case: the path's word and a number counted down the limb, for example <c>axial-2</c>.</param>
/// <param name="Path">The path.</param>
/// <param name="Part">The part, by majority of its places; the more proximal on a tie.</param>
/// <param name="ConsensusLevel">Where the place lies in the first examination's tape, or the zone.</param>
/// <param name="Steps">At least one, ordered by date and examination id; at most one an examination.</param>
public sealed record Track(string Id, LinkPath Path, Part Part, Level ConsensusLevel, IReadOnlyList<TrackStep> Steps);
