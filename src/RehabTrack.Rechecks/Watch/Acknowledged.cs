using RehabTrack.Rechecks.Findings;

namespace RehabTrack.Rechecks.Watch;

/// <summary>What somebody acknowledged, as it was then.</summary>
/// <param name="Key">Which occurrence: <see cref="StandingFinding.Key"/>.</param>
/// <param name="Severity">How severe it was.</param>
/// <param name="Weight">How bad it was: <see cref="StandingFinding.Weight"/>.</param>
public sealed record Acknowledged(string Key, FindingSeverity Severity, int Weight);
