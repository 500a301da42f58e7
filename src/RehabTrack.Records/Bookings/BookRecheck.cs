using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Bookings;

/// <summary>Books a recheck. What else is booked at that time is a caution; only a second booking for the same recheck is refused.</summary>
public sealed class BookRecheck(RecordsAccess access) : Command<BookRecheckInput, Saved>(access)
{
    private protected override Right Right => Right.BookRechecks;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        BookRecheckInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        CaseRecord? injury = await BookingRows.CaseAsync(records, input.CaseId, cancellation);
        if (injury is null)
        {
            return RecordProblems.NotFound("case");
        }

        if (injury.ClosedAt is not null)
        {
            return CaseRules.Closed;
        }

        DateOnly? last = await BookingRows.LastExaminationAsync(records, injury.Id, cancellation);
        BookingRecord? standing = await BookingRows
            .Standing(records)
            .Where(other => other.CaseId == injury.Id)
            .OrderByDescending(other => other.Id)
            .FirstOrDefaultAsync(cancellation);
        if (standing is not null && !BookingRows.Of(standing).IsServedBy(last, BookingRows.Usual))
        {
            return new Problem("date", "recheck-already-booked", RecordText.Of(standing.Date));
        }

        BookingRecord booking = new()
        {
            Id = session.NewId(),
            CaseId = injury.Id,
            BookedById = session.Person.Id,
            BookedAt = session.Now,
        };
        List<Problem> problems = await BookingRows.WriteAsync(session, booking, input.Plan, last, cancellation);
        if (problems.Count > 0)
        {
            return problems;
        }

        records.Bookings.Add(booking);
        IReadOnlyList<Problem> cautions = await BookingRows.CautionsAsync(session, booking, injury, cancellation);
        await records.SaveChangesAsync(cancellation);
        return Outcome<Saved>.Of(new Saved(booking.Id, booking.Version), cautions);
    }
}
