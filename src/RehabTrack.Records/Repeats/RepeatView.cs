using RehabTrack.Rechecks.Repeats;

namespace RehabTrack.Records.Repeats;

/// <summary>A repeat tracing as entered.</summary>
/// <param name="Id">Identity.</param>
/// <param name="Version">Version token.</param>
/// <param name="Tracing">What was measured.</param>
/// <param name="EnteredBy">Who entered it.</param>
/// <param name="EnteredAt">When, UTC.</param>
public sealed record RepeatView(Guid Id, Guid Version, RepeatTracing Tracing, string EnteredBy, DateTime EnteredAt);
