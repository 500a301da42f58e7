namespace RehabTrack.Records.Bookings;

/// <summary>Another booked recheck at the same time.</summary>
/// <param name="HorseName">Its horse.</param>
/// <param name="Time">When it begins.</param>
/// <param name="SameVet">Whether the same vet is to be at both; else they share the place only.</param>
public sealed record ClashView(string HorseName, TimeOnly Time, bool SameVet);
