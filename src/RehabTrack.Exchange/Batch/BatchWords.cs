using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Batch;

/// <summary>How codes become sentences in the output; the texts themselves live elsewhere.</summary>
/// <param name="OfProblem">The sentence of a problem.</param>
/// <param name="OfFinding">The sentence of a finding.</param>
public sealed record BatchWords(Func<Problem, string> OfProblem, Func<Finding, string> OfFinding);
