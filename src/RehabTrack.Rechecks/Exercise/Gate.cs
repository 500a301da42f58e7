using RehabTrack.Rechecks.Suggestions;

namespace RehabTrack.Rechecks.Exercise;

/// <summary>A recheck that stands between one step and the next. Only a signed examination and a signed decision pass it.</summary>
/// <param name="Criteria">What must be true to go up, in words that can be read out; may be empty.</param>
/// <param name="Rules">The rules that must suggest the step up, for the page to show as met or not met. They pass nothing by themselves.</param>
public sealed record Gate(string Criteria, IReadOnlyList<RuleCode> Rules);
