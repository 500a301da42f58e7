namespace RehabTrack.Records.History;

/// <summary>What came of walking along one practice's trail.</summary>
/// <param name="PracticeId">The practice; the empty id for what belongs to none.</param>
/// <param name="Practice">Its name; empty where it has none.</param>
/// <param name="Lines">How many lines were walked along, up to the first that does not fit.</param>
/// <param name="End">The last line that fits: to be noted elsewhere; null when there is none.</param>
/// <param name="FirstBreak">The first line that does not fit; null when all do.</param>
public sealed record TrailCheck(Guid PracticeId, string Practice, long Lines, TrailAnchor? End, TrailBreak? FirstBreak);
