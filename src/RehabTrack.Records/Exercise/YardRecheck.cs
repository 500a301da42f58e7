namespace RehabTrack.Records.Exercise;

/// <summary>The next recheck of a horse, of all its cases the first.</summary>
/// <param name="Date">The day booked; without a booking the day on which it is due, which may have passed.</param>
/// <param name="Time">The time booked; null when only the day is.</param>
/// <param name="IsBooked">Whether it is booked.</param>
public sealed record YardRecheck(DateOnly Date, TimeOnly? Time, bool IsBooked);
