using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.People;

/// <summary>
/// Adds or changes a person. Who works here, and who may sign in, is for those to say who may change staff; nobody takes the last vet's
/// or their own right to sign in away. What a vet signed who may sign no more permits nothing until another vet signs.
/// </summary>
public sealed class SavePerson(RecordsAccess access) : Command<SavePersonInput, Saved>(access)
{
    private protected override Right Right => Right.ChangeContacts;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        SavePersonInput input,
        CancellationToken cancellation
    )
    {
        Checks checks = new();
        string name = checks.Name("name", input.Name);
        string? phone = checks.Phone("phone", input.Phone);
        string? mail = checks.Mail("mail", input.Mail);
        string language = checks.Name("language", input.Language);
        PersonRecord? person = null;
        if (input.Id is { } id)
        {
            person = await session.Records.People.FirstOrDefaultAsync(record => record.Id == id && record.ArchivedAt == null, cancellation);
            if (person is null)
            {
                return RecordProblems.NotFound("person");
            }
        }

        bool concernsStaff =
            RightsTable.ConcernsStaff(input.Role, input.CanSignIn)
            || (person is not null && RightsTable.ConcernsStaff(person.Role, person.CanSignIn));
        if (concernsStaff && !session.Allows(Right.ChangeStaff))
        {
            checks.Add(RecordProblems.VetOnly("role"));
        }

        if (person?.Id == session.Person.Id && (!input.CanSignIn || input.Role != person.Role))
        {
            checks.Add(new("canSignIn", "own-sign-in"));
        }

        if (checks.Any)
        {
            return checks.Problems;
        }

        if (person is null)
        {
            person = new PersonRecord
            {
                Id = session.NewId(),
                Name = name,
                FoldedName = "",
                Language = language,
            };
            session.Records.People.Add(person);
        }
        else if (person.Version != input.Version)
        {
            Conflict conflict = new Conflict()
                .Field("name", person.Name, name)
                .Field("role", person.Role, input.Role)
                .Field("phone", person.Phone, phone)
                .Field("mail", person.Mail, mail)
                .Field("language", person.Language, language)
                .Field("canSignIn", person.CanSignIn, input.CanSignIn);
            if (conflict.Any)
            {
                return conflict.Problems;
            }
        }

        if (MayDecide(person.Role, person.CanSignIn) && !MayDecide(input.Role, input.CanSignIn))
        {
            await ExerciseHolds.WithdrawAsync(session, person.Id, cancellation);
        }

        if (person.CanSignIn && (!input.CanSignIn || person.Role != input.Role))
        {
            await AccountEnding.EndAsync(session, person.Id, cancellation);
        }

        person.Name = name;
        person.FoldedName = Folded.Of(name);
        person.Role = input.Role;
        person.Phone = phone;
        person.Mail = mail;
        person.Language = language;
        person.CanSignIn = input.CanSignIn;
        if (concernsStaff && !await session.UseConfirmationAsync(cancellation))
        {
            return RecordProblems.NotConfirmed;
        }

        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(person.Id, person.Version);
    }

    // Who is added just now has signed nothing yet.
    private static bool MayDecide(Role role, bool canSignIn) => canSignIn && RightsTable.ReachOf(role, Right.DecideExercise) != Reach.None;
}
