using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Accounts;

/// <summary>Makes the address with which a person who may sign in chooses a password, once; an older one answers no more.</summary>
public sealed class InvitePerson(RecordsAccess access) : Command<InvitePersonInput, Saved>(access)
{
    private protected override Right Right => Right.ChangeStaff;

    private protected override bool NeedsConfirmation => true;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        InvitePersonInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        PersonRecord? person = await records.People.FirstOrDefaultAsync(
            record => record.Id == input.PersonId && record.ArchivedAt == null,
            cancellation
        );
        if (person is null)
        {
            return RecordProblems.NotFound("person");
        }

        if (!person.CanSignIn)
        {
            return new Problem("person", "invite-no-sign-in", person.Name);
        }

        await AccountWriting.RevokeInvitationsAsync(records, person.Id, session.Person.Id, session.Now, cancellation);
        InvitationRecord made = AccountWriting.Invitation(
            person.Id,
            session.Person.Id,
            input.SecretHash,
            input.TakesSecondStep,
            session.Now
        );
        records.Invitations.Add(made);
        session.Note(AccessEvent.InvitationMade, person.Id);
        await records.SaveChangesAsync(cancellation);
        return new Saved(made.Id, made.Version);
    }
}
