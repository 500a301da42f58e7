namespace RehabTrack.Records.Bookings;

/// <summary>A call that was noted.</summary>
/// <param name="Outcome">What came of it.</param>
/// <param name="Person">Who was rung; null when not said.</param>
/// <param name="Words">In free words; null when there are none.</param>
/// <param name="NotedBy">Who noted it.</param>
/// <param name="NotedAt">When, UTC.</param>
public sealed record CallView(CallOutcome Outcome, string? Person, string? Words, string NotedBy, DateTime NotedAt);
