using RehabTrack.Rechecks.Findings;

namespace RehabTrack.Rechecks.Suggestions;

/// <summary>One row of <c>shared/rules.json</c>.</summary>
/// <param name="Code">Which rule.</param>
/// <param name="Id">The row's name, for example <c>ligament-area-red</c>.</param>
/// <param name="Move">What it suggests.</param>
/// <param name="Severity">How much it asks of a person.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record Rule(RuleCode Code, string Id, SuggestedMove Move, FindingSeverity Severity, string Source);
