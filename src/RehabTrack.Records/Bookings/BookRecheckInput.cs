using RehabTrack.Records.Room;

namespace RehabTrack.Records.Bookings;

/// <summary>A recheck to be booked.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="CaseId">The case.</param>
/// <param name="Plan">When, where and by whom.</param>
public sealed record BookRecheckInput(Guid CommandId, Guid CaseId, BookingPlan Plan) : ICommand;
