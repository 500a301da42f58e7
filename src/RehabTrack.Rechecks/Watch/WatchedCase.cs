using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Schedule;

namespace RehabTrack.Rechecks.Watch;

/// <summary>An open case as it is watched.</summary>
/// <param name="CaseId">The case.</param>
/// <param name="Findings">What its analysis says.</param>
/// <param name="LastExamination">The date of its last examination; null when there is none.</param>
/// <param name="Due">When its recheck is due.</param>
public sealed record WatchedCase(string CaseId, IReadOnlyList<Finding> Findings, DateOnly? LastExamination, RecheckDue Due);
