using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Feeds;

/// <summary>Reads booked rechecks for calendars.</summary>
internal static class CalendarVisits
{
    public static async Task<CalendarContent> OfAsync(
        RecordsContext records,
        PracticeRecord practice,
        IQueryable<BookingRecord> bookings,
        CancellationToken cancellation
    )
    {
        var rows = await (
            from booking in bookings
            join injury in records.Cases on booking.CaseId equals injury.Id
            join horse in records.Horses on injury.HorseId equals horse.Id
            join comes in records.People on booking.VetId equals comes.Id into vets
            from vet in vets.DefaultIfEmpty()
            where booking.ArchivedAt == null
            orderby booking.Date, booking.Id
            select new
            {
                Booking = booking,
                horse.Name,
                Vet = vet == null ? null : vet.Name,
                Ended = injury.ArchivedAt != null || horse.ArchivedAt != null,
            }
        )
            .AsNoTracking()
            .ToArrayAsync(cancellation);
        return new CalendarContent(
            practice.Name,
            [
                .. rows.Select(row => new CalendarVisit
                {
                    BookingId = row.Booking.Id,
                    // Putting a case away changes no booking, so the step that cancels its entry is counted here.
                    Sequence = row.Booking.Sequence + (row.Ended && row.Booking.CancelledAt is null ? 1 : 0),
                    HorseName = row.Name,
                    Date = row.Booking.Date,
                    Begins = row.Booking.Time is { } time ? PracticeTime.InstantOf(row.Booking.Date, time, practice.TimeZone) : null,
                    Minutes = row.Booking.Minutes,
                    Place = row.Booking.Place,
                    TravelNote = row.Booking.TravelNote,
                    Vet = row.Vet,
                    IsCancelled = row.Ended || row.Booking.CancelledAt is not null,
                    BookedAt = row.Booking.BookedAt,
                    ChangedAt = row.Booking.ChangedAt,
                }),
            ]
        );
    }
}
