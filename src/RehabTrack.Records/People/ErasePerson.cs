using System.Text;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.People;

/// <summary>
/// Erases what is held of a person who was put away: names, telephone, mail, those of before too, the addresses of letters, the words of calls,
/// what they signed in with and where, what the trail says of them, and all of it in answers of commands, in what is being written and in
/// files that were handed in. The horse's record stays, with the person as somebody whose name is gone; a name under a signature stays, since
/// a record must say who signed. The trail still fits.
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
        PersonMarks marks = await PersonMarks.OfAsync(records, person, [instead, nameKept ? person.Name : null], cancellation);
        person.Name = nameKept ? person.Name : instead;
        person.FoldedName = Folded.Of(person.Name);
        person.Phone = null;
        person.Mail = null;
        person.CanSignIn = false;
        List<ReminderRecord> letters = await records.Reminders.Where(letter => letter.PersonId == person.Id).ToListAsync(cancellation);
        letters.ForEach(letter => letter.Mail = "");
        List<CallRecord> calls = await CallsAsync(records, person.Id, marks, instead, cancellation);
        await DraftsAsync(records, marks, instead, cancellation);
        // What these writes tell of the words that go is emptied with the older lines.
        await records.SaveChangesAsync(cancellation);
        Guid[] about = [person.Id, .. letters.Select(letter => letter.Id), .. calls.Select(call => call.Id)];
        int lines = await Erasure.EmptyAsync(
            records,
            records.Changes.Where(line => line.Kind != AccessLine.Kind && about.Contains(line.RecordId)),
            ErasureReason.PersonErased,
            person.Id,
            cancellation
        );
        await AccountEnding.ForgetAsync(records, person.Id, cancellation);
        await ForgetAnswersAsync(records, marks, cancellation);
        await ForgetFilesAsync(records, marks, cancellation);
        return new PersonErased(person.Id, nameKept, lines);
    }

    // That there was a call, when and with what outcome is the horse's record; what was said with the person goes, and their name elsewhere.
    private static async Task<List<CallRecord>> CallsAsync(
        RecordsContext records,
        Guid personId,
        PersonMarks marks,
        string instead,
        CancellationToken cancellation
    )
    {
        List<CallRecord> touched = [];
        await foreach (
            CallRecord call in records.Calls.Where(call => call.Words != null).AsAsyncEnumerable().WithCancellation(cancellation)
        )
        {
            string? words = call.PersonId == personId ? null : marks.Without(call.Words!, instead);
            if (words != call.Words)
            {
                call.Words = words;
                touched.Add(call);
            }
        }

        return touched;
    }

    // What is being written is signed by nobody yet, and the trail does not tell of it.
    private static async Task DraftsAsync(RecordsContext records, PersonMarks marks, string instead, CancellationToken cancellation)
    {
        foreach (TypedFormRecord form in await records.TypedForms.ToListAsync(cancellation))
        {
            if (marks.AreIn(form.FieldsJson))
            {
                form.FieldsJson = marks.WithoutInJson(form.FieldsJson, instead);
            }
        }

        foreach (ExaminationRecord draft in await records.Examinations.Where(one => one.Typed != null).ToListAsync(cancellation))
        {
            if (marks.AreIn(draft.Typed!))
            {
                draft.Typed = marks.WithoutInJson(draft.Typed!, instead);
            }
        }
    }

    // A file that was handed in is no record: what of it is wanted was imported, or is handed in anew.
    private static async Task ForgetFilesAsync(RecordsContext records, PersonMarks marks, CancellationToken cancellation)
    {
        foreach (Guid id in await records.ImportFiles.Select(file => file.Id).ToListAsync(cancellation))
        {
            ImportFileRecord file = await records.ImportFiles.AsNoTracking().SingleAsync(one => one.Id == id, cancellation);
            if (new[] { Encoding.UTF8, Encoding.Latin1 }.Any(encoding => marks.AreIn(encoding.GetString(file.Content))))
            {
                await records.ImportFiles.Where(one => one.Id == id).ExecuteDeleteAsync(cancellation);
            }
        }
    }

    // The answer to a command may hold a name or an address, as that of one that wrote a letter does. The command stays done: what is asked
    // again is not done again, and not answered any more.
    private static async Task ForgetAnswersAsync(RecordsContext records, PersonMarks marks, CancellationToken cancellation)
    {
        foreach (string mark in marks.All.Select(PersonMarks.InJson))
        {
            await records
                .AppliedCommands.Where(applied => applied.ResultJson.Contains(mark))
                .ExecuteUpdateAsync(set => set.SetProperty(applied => applied.ResultJson, ""), cancellation);
        }
    }
}
