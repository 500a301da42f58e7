using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Accounts;

/// <summary>Ends a session of the person who asks, or all of a person whom they look after; what was open in it opens nothing from then on.</summary>
public sealed class EndSession(RecordsAccess access) : Command<EndSessionInput, int>(access)
{
    private protected override Right Right => Right.KeepOwnAccount;

    private protected override async Task<Outcome<int>> WriteAsync(
        RecordsSession session,
        EndSessionInput input,
        CancellationToken cancellation
    )
    {
        Guid personId = input.PersonId ?? session.Person.Id;
        if (personId != session.Person.Id && !session.Allows(Right.ChangeStaff))
        {
            return RecordProblems.NotAllowed;
        }

        IQueryable<SessionRecord> living = SessionLife
            .Of(session.Records, personId, session.Now)
            .Where(record => (input.SessionId == null || record.Id == input.SessionId) && record.Id != input.ExceptId);
        int ended = await living.ExecuteUpdateAsync(record => record.SetProperty(row => row.EndedAt, session.Now), cancellation);
        if (ended > 0)
        {
            session.Note(AccessEvent.SessionEnded, personId);
        }

        return ended;
    }
}
