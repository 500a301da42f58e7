using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Schedule;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Bookings;

/// <summary>What booking and moving share.</summary>
internal static class BookingRows
{
    public static readonly ScheduleSettings Usual = new();

    public static IQueryable<BookingRecord> Standing(RecordsContext records) =>
        records.Bookings.Where(booking => booking.ArchivedAt == null && booking.CancelledAt == null);

    /// <summary>The case, open or closed, when neither it nor its horse was put away.</summary>
    public static Task<CaseRecord?> CaseAsync(RecordsContext records, Guid caseId, CancellationToken cancellation) =>
        records.Cases.FirstOrDefaultAsync(
            injury =>
                injury.Id == caseId
                && injury.ArchivedAt == null
                && records.Horses.Any(horse => horse.Id == injury.HorseId && horse.ArchivedAt == null),
            cancellation
        );

    public static RecheckBooking Of(BookingRecord booking) => new(booking.Date, booking.AfterExamination);

    public static BookedVisit ToVisit(BookingRecord booking) =>
        new(
            RecordText.Of(booking.Id),
            booking.Date,
            booking.Time,
            booking.Minutes,
            booking.VetId is { } vet ? RecordText.Of(vet) : null,
            booking.Place
        );

    /// <summary>The last examination of the case that counts, whoever made it.</summary>
    public static Task<DateOnly?> LastExaminationAsync(RecordsContext records, Guid caseId, CancellationToken cancellation) =>
        records
            .Examinations.Where(examination =>
                examination.CaseId == caseId && examination.ArchivedAt == null && examination.State != ExaminationState.Draft
            )
            .MaxAsync(examination => (DateOnly?)examination.Date, cancellation);

    /// <summary>Checks the plan and writes it into the booking.</summary>
    public static async Task<List<Problem>> WriteAsync(
        RecordsSession session,
        BookingRecord booking,
        BookingPlan plan,
        DateOnly? lastExamination,
        CancellationToken cancellation
    )
    {
        Checks checks = new();
        int minutes = plan.Minutes ?? Usual.VisitMinutes;
        checks.AddRange(BookingRules.Check(plan.Date, minutes, lastExamination, Usual, session.Today));
        string? place = checks.Line("place", plan.Place);
        string? travel = checks.Text("travelNote", plan.TravelNote);
        if (
            plan.VetId is { } id
            && plan.VetId != booking.VetId
            && !await session.Records.People.AnyAsync(
                person => person.Id == id && person.Role == Role.Vet && person.ArchivedAt == null,
                cancellation
            )
        )
        {
            checks.Add(RecordProblems.NotFound("vetId"));
        }

        if (!checks.Any)
        {
            booking.Date = plan.Date;
            booking.Time = plan.Time;
            booking.Minutes = minutes;
            booking.VetId = plan.VetId;
            booking.Place = place;
            booking.TravelNote = travel;
            booking.AfterExamination = lastExamination;
            booking.ChangedAt = session.Now;
        }

        return checks.Problems;
    }

    /// <summary>What to mind about a booking that is kept all the same.</summary>
    public static async Task<IReadOnlyList<Problem>> CautionsAsync(
        RecordsSession session,
        BookingRecord booking,
        CaseRecord injury,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        List<Problem> cautions = [];
        DateOnly? lastSigned = await records
            .CaseSummaries.Where(summary => summary.CaseId == injury.Id)
            .Select(summary => summary.LastSigned)
            .FirstOrDefaultAsync(cancellation);
        RecheckDue due = DueDates.Of(
            injury.RecheckIntervalDays,
            lastSigned,
            session,
            await SignedRechecks.OfHorseAsync(session, injury.HorseId, cancellation)
        );
        if (booking.Date > due.DueDate)
        {
            cautions.Add(new Problem("date", "booked-after-due", RecordText.Of(due.DueDate.Value)));
        }

        DateOnly before = booking.Date.AddDays(-1);
        DateOnly after = booking.Date.AddDays(1);
        var near = await (
            from other in Standing(records)
            join othersCase in records.Cases on other.CaseId equals othersCase.Id
            join horse in records.Horses on othersCase.HorseId equals horse.Id
            where other.Date >= before && other.Date <= after && other.Id != booking.Id && othersCase.ClosedAt == null
            orderby other.Date, other.Time
            select new { Booking = other, horse.Name }
        ).ToArrayAsync(cancellation);
        foreach (BookingClash clash in BookingClash.Of(ToVisit(booking), near.Select(row => ToVisit(row.Booking))))
        {
            var other = near.First(row => RecordText.Of(row.Booking.Id) == clash.OtherId);
            cautions.Add(
                new Problem("time", clash.SameVet ? "vet-booked-twice" : "place-booked-twice", other.Name, $"{other.Booking.Time:HH:mm}")
            );
        }

        if (booking.VetId is { } vet)
        {
            string? covering = await (
                from cover in records.Covers
                join person in records.People on cover.CoveringVetId equals person.Id
                where cover.VetId == vet && cover.ArchivedAt == null && cover.From <= booking.Date && cover.To >= booking.Date
                select person.Name
            ).FirstOrDefaultAsync(cancellation);
            if (covering is not null)
            {
                cautions.Add(new Problem("vetId", "vet-away", covering));
            }
        }

        return cautions;
    }
}
