using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Feeds;

/// <summary>Reads one booked recheck, by its booking, for a calendar file.</summary>
public sealed class GetCalendarVisit(RecordsAccess access) : UseCase<Guid, CalendarContent>(access)
{
    private protected override Right Right => Right.SeeCases;

    private protected override async Task<Outcome<CalendarContent>> RunAsync(
        RecordsSession session,
        Guid input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        CalendarContent found = await CalendarVisits.OfAsync(
            records,
            session.Practice,
            records.Bookings.Where(booking => booking.Id == input),
            cancellation
        );
        return found.Visits.Count == 0 ? RecordProblems.NotFound("booking") : found;
    }
}
