using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.People;

/// <summary>Puts a person away: no longer listed, no longer signed in, still named wherever they signed. What they signed last permits nothing more.</summary>
public sealed class ArchivePerson(RecordsAccess access) : Command<RecordInput, Saved>(access)
{
    private protected override Right Right => Right.ChangeContacts;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        RecordInput input,
        CancellationToken cancellation
    )
    {
        PersonRecord? person = await session.Records.People.FirstOrDefaultAsync(
            record => record.Id == input.Id && record.ArchivedAt == null,
            cancellation
        );
        if (person is null)
        {
            return RecordProblems.NotFound("person");
        }

        if (person.Id == session.Person.Id)
        {
            return new Rechecks.Quantities.Problem("person", "own-sign-in");
        }

        bool concernsStaff = RightsTable.ConcernsStaff(person.Role, person.CanSignIn);
        if (concernsStaff && !session.Allows(Right.ChangeStaff))
        {
            return RecordProblems.VetOnly("person");
        }

        if (person.Version != input.Version)
        {
            return RecordProblems.ChangedMeanwhile;
        }

        if (concernsStaff && !await session.UseConfirmationAsync(cancellation))
        {
            return RecordProblems.NotConfirmed;
        }

        person.ArchivedAt = session.Now;
        await ExerciseHolds.WithdrawAsync(session, person.Id, cancellation);
        await AccountEnding.EndAsync(session, person.Id, cancellation);
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(person.Id, person.Version);
    }
}
