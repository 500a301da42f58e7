using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Rights;

/// <summary>
/// The one gate. It trusts nothing the actor claims: the person must be in the actor's practice, not archived, allowed to sign in,
/// and still hold the role.
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
    public static async Task<Access?> AskAsync(RecordsContext records, Actor actor, Right right)
    {
        PersonRecord? person = await PersonById(records, actor.PersonId);
        if (person is null || person.ArchivedAt is not null || !person.CanSignIn || person.Role != actor.Role)
        {
            return null;
        }

        Reach reach = RightsTable.ReachOf(person.Role, right);
        return reach != Reach.None && await Practice(records) is { ArchivedAt: null } practice ? new(reach, person, practice) : null;
    }
}
