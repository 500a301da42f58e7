using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Bookings;

/// <summary>Cancels a booked recheck. It stays, marked, so that calendars learn of it; the recheck stays due.</summary>
public sealed class CancelBooking(RecordsAccess access) : Command<CancelBookingInput, Saved>(access)
{
    private protected override Right Right => Right.BookRechecks;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        CancelBookingInput input,
        CancellationToken cancellation
    )
    {
        Checks checks = new();
        string? reason = checks.Text("reason", input.Reason);
        if (checks.Any)
        {
            return checks.Problems;
        }

        BookingRecord? booking = await session.Records.Bookings.FirstOrDefaultAsync(
            record => record.Id == input.Id && record.ArchivedAt == null,
            cancellation
        );
        if (booking is null)
        {
            return RecordProblems.NotFound("booking");
        }

        if (booking.CancelledAt is not null)
        {
            return new Problem("", "booking-cancelled");
        }

        if (booking.Version != input.Version)
        {
            return RecordProblems.ChangedMeanwhile;
        }

        Cancel(booking, reason, session.Now);
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(booking.Id, booking.Version);
    }

    internal static void Cancel(BookingRecord booking, string? reason, DateTime now)
    {
        booking.CancelledAt = now;
        booking.CancelledReason = reason;
        booking.ChangedAt = now;
        booking.Sequence++;
    }
}
