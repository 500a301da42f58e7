using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Rights;

/// <summary>What the gate found: the person and the practice as they are now, and how far the right reaches.</summary>
internal sealed record Access(Reach Reach, PersonRecord Person, PracticeRecord Practice);
