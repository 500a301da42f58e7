using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Start;

/// <summary>
/// Who may be tried in the demo. It answers before anybody is an actor, so it tells names and roles and nothing else; outside the demo only
/// a password lets anybody in, and nobody asks it.
/// </summary>
public sealed class SignInDoor(RecordsAccess access)
{
    /// <summary>All who may sign in, staff first, then by name.</summary>
    public async Task<IReadOnlyList<Actor>> ListAsync(CancellationToken cancellation = default)
    {
        await using RecordsContext records = await access.OpenAsync(Guid.Empty, null, cancellation);
        PersonRecord[] people = await MaySignIn(records).ToArrayAsync(cancellation);
        return
        [
            .. people
                .OrderBy(person =>
                    person.Role == Role.Vet ? 0
                    : RightsTable.IsStaff(person.Role) ? 1
                    : 2
                )
                .ThenBy(person => person.Role)
                .ThenBy(person => person.FoldedName, StringComparer.Ordinal)
                .Select(Of),
        ];
    }

    /// <summary>The actor of a person who may sign in; null for anybody else.</summary>
    public async Task<Actor?> FindAsync(Guid personId, CancellationToken cancellation = default)
    {
        await using RecordsContext records = await access.OpenAsync(Guid.Empty, null, cancellation);
        return await MaySignIn(records).FirstOrDefaultAsync(person => person.Id == personId, cancellation) is { } found ? Of(found) : null;
    }

    private static IQueryable<PersonRecord> MaySignIn(RecordsContext records) =>
        records.People.IgnoreQueryFilters().AsNoTracking().Where(person => person.CanSignIn && person.ArchivedAt == null);

    private static Actor Of(PersonRecord person) => new(person.PracticeId, person.Id, person.Role, person.Name);
}
