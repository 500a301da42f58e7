using RehabTrack.Records.Room;

namespace RehabTrack.Records.Bookings;

/// <summary>A booked recheck as it shall be.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="Id">The booking.</param>
/// <param name="Version">The version that was read.</param>
/// <param name="Plan">When, where and by whom.</param>
public sealed record MoveBookingInput(Guid CommandId, Guid Id, Guid Version, BookingPlan Plan) : ICommand;
