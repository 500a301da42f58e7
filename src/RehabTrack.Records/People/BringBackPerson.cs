using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Archive;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.People;

/// <summary>
/// Brings a person back who was put away: listed, and signing in as before. What a vet's putting away held stays held until a vet signs; who
/// was erased does not come back.
/// </summary>
public sealed class BringBackPerson(RecordsAccess access) : Command<RecordInput, Saved>(access)
{
    private protected override Right Right => Right.ChangeContacts;

    private protected override Task<Outcome<Saved>> WriteAsync(RecordsSession session, RecordInput input, CancellationToken cancellation) =>
        ArchivedRecords.BringBackAsync(
            session,
            session.Records.People,
            input,
            "person",
            async person =>
            {
                bool concernsStaff = RightsTable.ConcernsStaff(person.Role, person.CanSignIn);
                if (concernsStaff && !session.Allows(Right.ChangeStaff))
                {
                    return [RecordProblems.VetOnly("person")];
                }

                IQueryable<PersonRecord> self = session.Records.People.Where(record => record.Id == person.Id);
                if (!await ErasedPeople.Without(session.Records, self).AnyAsync(cancellation))
                {
                    return [new Problem("person", "bring-back-erased")];
                }

                return concernsStaff && !await session.UseConfirmationAsync(cancellation) ? [RecordProblems.NotConfirmed] : [];
            },
            cancellation
        );
}
