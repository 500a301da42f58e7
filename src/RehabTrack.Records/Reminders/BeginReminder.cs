using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Reminders;

/// <summary>
/// Keeps that a reminder is about to be mailed, before any mail server is asked: who, to whom, when. What became of it is told by
/// <see cref="SettleReminder"/>, once.
/// </summary>
public sealed class BeginReminder(RecordsAccess access) : Command<BeginReminderInput, BegunReminder>(access)
{
    private protected override Right Right => Right.BookRechecks;

    private protected override async Task<Outcome<BegunReminder>> WriteAsync(
        RecordsSession session,
        BeginReminderInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        Outcome<ReminderLetter> read = await ReminderRows.LetterAsync(session, input.CaseId, cancellation);
        if (!read.Succeeded)
        {
            return Outcome<BegunReminder>.Failed(read.Problems);
        }

        ReminderLetter letter = read.Value;
        HorsePersonView? reader = letter.Readers.FirstOrDefault(person => person.PersonId == input.PersonId);
        if (reader is null)
        {
            return RecordProblems.NotFound("personId");
        }

        if (reader.Mail is null)
        {
            return new Problem("personId", "reader-without-mail", reader.Name);
        }

        if ((letter.BookedOn ?? letter.Due.DueDate) is not { } dueOn)
        {
            return new Problem("case", "nothing-to-remind-of");
        }

        DateTime today = PracticeTime.InstantOf(session.Today, TimeOnly.MinValue, session.Practice.TimeZone);
        if (
            !input.Again
            && await records.Reminders.AnyAsync(
                reminder =>
                    reminder.CaseId == input.CaseId
                    && reminder.PersonId == input.PersonId
                    && reminder.BegunAt >= today
                    && reminder.State != ReminderState.Refused,
                cancellation
            )
        )
        {
            return new Problem("personId", "reminded-today", reader.Name);
        }

        ReminderRecord kept = new()
        {
            Id = session.NewId(),
            CaseId = input.CaseId,
            PersonId = reader.PersonId,
            Mail = reader.Mail,
            DueOn = dueOn,
            State = ReminderState.Begun,
            BegunById = session.Person.Id,
            BegunAt = session.Now,
        };
        records.Reminders.Add(kept);
        await records.SaveChangesAsync(cancellation);
        return new BegunReminder(kept.Id, reader.Name, reader.Mail);
    }
}
