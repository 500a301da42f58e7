using RehabTrack.Rechecks.Findings;

namespace RehabTrack.Rechecks.Analysis;

/// <summary>What a person was told.</summary>
/// <param name="Kind">What it was.</param>
/// <param name="Severity">How much it asked.</param>
/// <param name="ExaminationId">The examination it spoke of; null when it spoke of the course.</param>
public sealed record SeenFinding(FindingKind Kind, FindingSeverity Severity, string? ExaminationId);
