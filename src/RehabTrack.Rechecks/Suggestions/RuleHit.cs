using RehabTrack.Rechecks.Findings;

namespace RehabTrack.Rechecks.Suggestions;

/// <summary>A rule that speaks, with what it rests on.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Finding">The finding with place, figures and error; null when the rule rests on no figure.</param>
public sealed record RuleHit(Rule Rule, Finding? Finding);
