using RehabTrack.Rechecks.Watch;

namespace RehabTrack.Records.Watch;

/// <summary>What stands, with whoever acknowledged it.</summary>
/// <param name="Finding">What stands.</param>
/// <param name="Acknowledgement">The latest that covers it; null while nobody has.</param>
public sealed record WatchedFinding(StandingFinding Finding, Acknowledgement? Acknowledgement);
