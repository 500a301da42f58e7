namespace RehabTrack.Rechecks.Schedule;

/// <summary>A booked recheck, as far as it can stand in another's way.</summary>
/// <param name="Id">Names it among the others.</param>
/// <param name="Date">The practice's calendar date.</param>
/// <param name="Time">The practice's wall-clock time; null when only the day is booked.</param>
/// <param name="Minutes">How long it takes, by the wall clock.</param>
/// <param name="VetId">Who comes; null when not said.</param>
/// <param name="Place">Where; null when not said.</param>
public sealed record BookedVisit(string Id, DateOnly Date, TimeOnly? Time, int Minutes, string? VetId, string? Place);
