namespace RehabTrack.Records.Start;

/// <summary>A booked recheck of the demo.</summary>
/// <param name="Case">The case, by its label.</param>
/// <param name="Made">When it was booked.</param>
/// <param name="Date">For which day.</param>
/// <param name="Time">At what time.</param>
/// <param name="Vet">Who comes; by key.</param>
/// <param name="Place">Where.</param>
/// <param name="TravelNote">A travel note; null for none.</param>
public sealed record DemoBooking(string Case, DateOnly Made, DateOnly Date, TimeOnly Time, string Vet, string Place, string? TravelNote);
