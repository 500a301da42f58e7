using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Bookings;

/// <summary>Moves a booked recheck, or changes what was said of it. It stays the same entry for calendars.</summary>
public sealed class MoveBooking(RecordsAccess access) : Command<MoveBookingInput, Saved>(access)
{
    private protected override Right Right => Right.BookRechecks;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        MoveBookingInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        BookingRecord? booking = await records.Bookings.FirstOrDefaultAsync(
            record => record.Id == input.Id && record.ArchivedAt == null,
            cancellation
        );
        if (booking is null || await BookingRows.CaseAsync(records, booking.CaseId, cancellation) is not { } injury)
        {
            return RecordProblems.NotFound("booking");
        }

        if (injury.ClosedAt is not null)
        {
            return CaseRules.Closed;
        }

        if (booking.CancelledAt is not null)
        {
            return new Problem("", "booking-cancelled");
        }

        if (booking.Version != input.Version)
        {
            BookingPlan plan = input.Plan;
            Conflict conflict = new Conflict()
                .Field("date", booking.Date, plan.Date)
                .Field("time", booking.Time, plan.Time)
                .Field("minutes", booking.Minutes, plan.Minutes ?? BookingRows.Usual.VisitMinutes)
                .Field("vetId", booking.VetId, plan.VetId)
                .Field("place", booking.Place, Checks.Trimmed(plan.Place))
                .Field("travelNote", booking.TravelNote, Checks.Trimmed(plan.TravelNote));
            if (conflict.Any)
            {
                return conflict.Problems;
            }
        }

        DateOnly? last = await BookingRows.LastExaminationAsync(records, injury.Id, cancellation);
        List<Problem> problems = await BookingRows.WriteAsync(session, booking, input.Plan, last, cancellation);
        if (problems.Count > 0)
        {
            return problems;
        }

        booking.Sequence++;
        IReadOnlyList<Problem> cautions = await BookingRows.CautionsAsync(session, booking, injury, cancellation);
        await records.SaveChangesAsync(cancellation);
        return Outcome<Saved>.Of(new Saved(booking.Id, booking.Version), cautions);
    }
}
