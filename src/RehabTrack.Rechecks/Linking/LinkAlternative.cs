using RehabTrack.Rechecks.Anatomy;

namespace RehabTrack.Rechecks.Linking;

/// <summary>Another track that a place might belong to.</summary>
/// <param name="TrackId">The other track.</param>
/// <param name="ConsensusLevel">Where that track lies in the first examination's tape, or the zone.</param>
/// <param name="Probability">Probability that the place belongs to it, 0 to 1.</param>
public sealed record LinkAlternative(string TrackId, Level ConsensusLevel, double Probability);
