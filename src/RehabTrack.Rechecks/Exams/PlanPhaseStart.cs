namespace RehabTrack.Rechecks.Exams;

/// <summary>The day from which a phase of the plan held.</summary>
/// <param name="From">Its first day.</param>
/// <param name="Phase">The phase.</param>
public sealed record PlanPhaseStart(DateOnly From, PlanPhase Phase);
