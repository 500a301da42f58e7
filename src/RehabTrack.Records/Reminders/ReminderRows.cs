using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Schedule;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Reminders;

/// <summary>Reads what reminders are made of.</summary>
internal static class ReminderRows
{
    public static async Task<Outcome<ReminderLetter>> LetterAsync(RecordsSession session, Guid caseId, CancellationToken cancellation)
    {
        RecordsContext records = session.Records;
        CaseRecord? injury = await BookingRows.CaseAsync(records, caseId, cancellation);
        if (injury is null)
        {
            return RecordProblems.NotFound("case");
        }

        if (injury.ClosedAt is not null)
        {
            return CaseRules.Closed;
        }

        string horse = await records.Horses.Where(one => one.Id == injury.HorseId).Select(one => one.Name).SingleAsync(cancellation);
        DateOnly? lastSigned = await records
            .CaseSummaries.Where(summary => summary.CaseId == caseId)
            .Select(summary => summary.LastSigned)
            .FirstOrDefaultAsync(cancellation);
        BookingRecord? booking = await BookingRows
            .Standing(records)
            .AsNoTracking()
            .Where(one => one.CaseId == caseId && one.Date >= session.Today)
            .OrderByDescending(one => one.Id)
            .FirstOrDefaultAsync(cancellation);
        BookingRecord? open = booking is not null && BookingRows.Of(booking).IsServedBy(lastSigned, BookingRows.Usual) ? null : booking;
        ReminderView[] mailed = await (
            from reminder in records.Reminders
            join reader in records.People on reminder.PersonId equals reader.Id
            join sender in records.People on reminder.BegunById equals sender.Id
            where reminder.CaseId == caseId && reminder.ArchivedAt == null
            orderby reminder.Id descending
            select new ReminderView(
                reminder.Id,
                reader.Name,
                reminder.Mail,
                reminder.State,
                reminder.Trouble,
                sender.Name,
                reminder.BegunAt
            )
        ).ToArrayAsync(cancellation);
        RecheckDue due = DueDates.Of(
            injury.RecheckIntervalDays,
            lastSigned,
            session,
            await SignedRechecks.OfHorseAsync(session, injury.HorseId, cancellation)
        );
        return new ReminderLetter
        {
            CaseId = caseId,
            HorseName = horse,
            PracticeName = session.Practice.Name,
            PracticePhone = session.Practice.Phone,
            TimeZone = session.Practice.TimeZone,
            LastSigned = lastSigned,
            Due = due,
            BookedOn = open?.Date,
            BookedAt = open?.Time,
            Place = open?.Place,
            TravelNote = open?.TravelNote,
            Readers =
            [
                .. (await HorsePeople.OfHorsesAsync(records, [injury.HorseId], cancellation))[injury.HorseId]
                    .Where(person => person.Relation is HorseRelation.Trainer or HorseRelation.Owner)
                    .OrderBy(person => person.Relation == HorseRelation.Trainer ? 0 : 1),
            ],
            Mailed =
            [
                .. mailed.Where(reminder =>
                    lastSigned is null || PracticeTime.DateOf(reminder.At, session.Practice.TimeZone) >= lastSigned
                ),
            ],
        };
    }
}
