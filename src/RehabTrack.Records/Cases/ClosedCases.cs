namespace RehabTrack.Records.Cases;

/// <summary>What ended when a case was closed.</summary>
/// <param name="Cases">Cases that were closed.</param>
/// <param name="Bookings">Booked rechecks that were cancelled with them.</param>
public sealed record ClosedCases(int Cases, int Bookings);
