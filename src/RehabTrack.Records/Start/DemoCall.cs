using RehabTrack.Records.Bookings;

namespace RehabTrack.Records.Start;

/// <summary>A call of the demo about a recheck.</summary>
/// <param name="Case">The case, by its label.</param>
/// <param name="Date">When.</param>
/// <param name="Outcome">What came of it.</param>
/// <param name="Person">Who was rung; by key.</param>
/// <param name="Words">In words.</param>
public sealed record DemoCall(string Case, DateOnly Date, CallOutcome Outcome, string Person, string Words);
