using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.People;

/// <summary>
/// Erases what is held of a person who was put away: name, telephone, mail, the addresses of letters, what they signed in with and where, and what the trail says of them.
/// The horse's record stays, with the person as somebody whose name is gone; a name under a signature stays, since a record must say who
/// signed. The trail still fits.
/// </summary>
public sealed class ErasePerson(RecordsAccess access) : Command<ErasePersonInput, PersonErased>(access)
{
    private protected override Right Right => Right.KeepPersonalData;

    private protected override bool NeedsConfirmation => true;

    private protected override async Task<Outcome<PersonErased>> WriteAsync(
        RecordsSession session,
        ErasePersonInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        PersonRecord? person = await records.People.FirstOrDefaultAsync(record => record.Id == input.Id, cancellation);
        if (person is null)
        {
            return RecordProblems.NotFound("person");
        }

        if (person.ArchivedAt is null)
        {
            return new Problem("person", "erase-not-put-away");
        }

        if (person.Version != input.Version)
        {
            return RecordProblems.ChangedMeanwhile;
        }

        Checks checks = new();
        string instead = checks.Name("nameInstead", input.NameInstead);
        if (checks.Any)
        {
            return checks.Problems;
        }

        bool nameKept = await PersonSignatures.AnyAsync(records, person.Id, cancellation);
        string? mail = person.Mail;
        person.Name = nameKept ? person.Name : instead;
        person.FoldedName = Folded.Of(person.Name);
        person.Phone = null;
        person.Mail = null;
        person.CanSignIn = false;
        List<ReminderRecord> letters = await records.Reminders.Where(letter => letter.PersonId == person.Id).ToListAsync(cancellation);
        letters.ForEach(letter => letter.Mail = "");
        // What these writes tell of the words that go is emptied with the older lines.
        await records.SaveChangesAsync(cancellation);
        Guid[] about = [person.Id, .. letters.Select(letter => letter.Id)];
        int lines = await Erasure.EmptyAsync(
            records,
            records.Changes.Where(line => line.Kind != AccessLine.Kind && about.Contains(line.RecordId)),
            ErasureReason.PersonErased,
            person.Id,
            cancellation
        );
        await AccountEnding.ForgetAsync(records, person.Id, cancellation);
        await ForgetAnswersAsync(records, mail, cancellation);
        return new PersonErased(person.Id, nameKept, lines);
    }

    // The answer to a command that wrote a letter holds its address: a repeat is not answered any more.
    private static async Task ForgetAnswersAsync(RecordsContext records, string? mail, CancellationToken cancellation)
    {
        if (mail is not null)
        {
            await records
                .AppliedCommands.Where(applied => applied.UseCase == nameof(Reminders.BeginReminder) && applied.ResultJson.Contains(mail))
                .ExecuteDeleteAsync(cancellation);
        }
    }
}
