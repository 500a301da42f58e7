using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Shares;

namespace RehabTrack.Records.Rights;

/// <summary>
/// The one gate. It trusts nothing the actor claims: the person must be in the actor's practice, not archived, still hold the role, and be
/// allowed to sign in, in a session that lives at this moment, or come through a share link that does.
/// </summary>
internal static class RightsGate
{
    private static readonly Func<RecordsContext, Guid, Task<PersonRecord?>> PersonById = EF.CompileAsyncQuery(
        (RecordsContext records, Guid id) => records.People.AsNoTracking().FirstOrDefault(person => person.Id == id)
    );

    private static readonly Func<RecordsContext, Task<PracticeRecord?>> Practice = EF.CompileAsyncQuery(
        (RecordsContext records) => records.Practices.AsNoTracking().SingleOrDefault()
    );

    /// <summary>The access, or null when the right is not given.</summary>
    public static async Task<Access?> AskAsync(RecordsContext records, Actor actor, Right right, DateTime now)
    {
        PersonRecord? person = await PersonById(records, actor.PersonId);
        if (person is null || person.ArchivedAt is not null || person.Role != actor.Role)
        {
            return null;
        }

        ShareScope? scope = null;
        SessionRecord? session = null;
        if (actor.ShareId is { } shareId)
        {
            scope = await LivingShares.ScopeAsync(records, shareId, person.Id, now);
            if (scope is null)
            {
                return null;
            }
        }
        else if (!person.CanSignIn)
        {
            return null;
        }
        else if (actor.SessionId is { } sessionId)
        {
            session = await SessionLife.FindAsync(records, sessionId, person.Id, now);
            if (session is null)
            {
                return null;
            }
        }

        Reach reach = RightsTable.ReachOf(person.Role, right);
        return reach != Reach.None && await Practice(records) is { ArchivedAt: null } practice
            ? new(reach, person, practice, scope, session)
            : null;
    }
}
