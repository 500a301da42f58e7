namespace RehabTrack.Records.Bookings;

/// <summary>A vet who can be booked.</summary>
/// <param name="Id">Identity.</param>
/// <param name="Name">Name.</param>
public sealed record BoardVet(Guid Id, string Name);
