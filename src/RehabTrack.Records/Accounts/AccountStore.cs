using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Accounts;

/// <summary>
/// Keeps accounts. It answers before anybody is an actor, to the code that checks passwords and to nothing else; it yields nothing of what the
/// practice keeps.
/// </summary>
public sealed class AccountStore(RecordsAccess access)
{
    /// <summary>The account of a name, on the whole server; null when there is none.</summary>
    /// <param name="foldedName">As <see cref="SignInAccount.Fold"/> makes it.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<SignInAccount?> ByNameAsync(string foldedName, CancellationToken cancellation = default)
    {
        await using RecordsContext all = await access.OpenAsync(Guid.Empty, null, cancellation);
        return await All(all).FirstOrDefaultAsync(account => account.FoldedSignInName == foldedName, cancellation);
    }

    /// <summary>The account of a person; null when there is none.</summary>
    public async Task<SignInAccount?> OfAsync(Guid personId, CancellationToken cancellation = default)
    {
        await using RecordsContext all = await access.OpenAsync(Guid.Empty, null, cancellation);
        return await All(all).FirstOrDefaultAsync(account => account.PersonId == personId, cancellation);
    }

    /// <summary>The person an account belongs to, as long as they may sign in.</summary>
    public async Task<Actor?> PersonAsync(SignInAccount account, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(account);
        await using RecordsContext records = await access.OpenAsync(account.PracticeId, null, cancellation);
        PersonRecord? person = await records
            .People.AsNoTracking()
            .FirstOrDefaultAsync(
                record =>
                    record.Id == account.PersonId
                    && record.CanSignIn
                    && record.ArchivedAt == null
                    && records.Practices.Any(practice => practice.ArchivedAt == null),
                cancellation
            );
        return person is null ? null : new Actor(person.PracticeId, person.Id, person.Role, person.Name);
    }

    /// <summary>Writes an account that is there; false when somebody else wrote it in between.</summary>
    public async Task<bool> UpdateAsync(SignInAccount account, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(account);
        await using RecordsContext records = await access.OpenAsync(account.PracticeId, null, cancellation);
        records.Accounts.Update(account).Property(kept => kept.Version).OriginalValue = account.Version;
        account.Version = Guid.CreateVersion7();
        try
        {
            await records.SaveChangesAsync(cancellation);
            return true;
        }
        catch (DbUpdateConcurrencyException)
        {
            return false;
        }
    }

    private static IQueryable<SignInAccount> All(RecordsContext records) => records.Accounts.IgnoreQueryFilters().AsNoTracking();
}
