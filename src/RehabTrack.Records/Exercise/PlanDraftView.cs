using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Records.Exercise;

/// <summary>A plan as it is being written.</summary>
/// <param name="Id">Identity.</param>
/// <param name="Version">Version token.</param>
/// <param name="Plan">What is written so far.</param>
/// <param name="WrittenBy">Who wrote last.</param>
/// <param name="WrittenAt">When (UTC).</param>
public sealed record PlanDraftView(Guid Id, Guid Version, PlanVersion Plan, string WrittenBy, DateTime WrittenAt);
