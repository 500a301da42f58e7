using RehabTrack.Records.Room;

namespace RehabTrack.Records.Bookings;

/// <summary>A booked recheck that shall not be.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="Id">The booking.</param>
/// <param name="Version">The version that was read.</param>
/// <param name="Reason">Why, in a few words; may be left out.</param>
public sealed record CancelBookingInput(Guid CommandId, Guid Id, Guid Version, string? Reason) : ICommand;
