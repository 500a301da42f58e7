using Microsoft.AspNetCore.Identity;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.History;
using RehabTrack.Records.Rights;

namespace RehabTrack.Web.Account;

/// <summary>
/// Looks whether a password fits. A name that is unknown, a password that does not fit and an account that is locked are one answer, after the
/// same work: the hasher runs each time.
/// </summary>
public sealed class PasswordCheck(
    UserManager<SignInAccount> users,
    AccountStore accounts,
    AccessBook book,
    KnownBrowsers known,
    SignInLimits limits,
    DecoyAccount decoy
)
{
    /// <summary>The account, when name and password fit and it is not locked; null otherwise.</summary>
    public async Task<SignInAccount?> ByNameAsync(HttpContext context, string? name, string? password)
    {
        ArgumentNullException.ThrowIfNull(context);
        SignInAccount? account = await accounts.ByNameAsync(SignInAccount.Fold(name ?? ""), context.RequestAborted);
        Guid? browser = account is null ? null : known.Find(context, account.PersonId);
        bool isOpen = account is not null && (browser is { } own ? limits.MayTry(own) : !await users.IsLockedOutAsync(account));
        // A locked account's own hash is not asked: how long it takes must not tell that there is one.
        SignInAccount asked = isOpen && account!.PasswordHash is not null ? account : decoy.Account;
        bool fits = await users.CheckPasswordAsync(asked, password ?? "") && asked == account;
        if (fits && await accounts.PersonAsync(account!, context.RequestAborted) is not null)
        {
            await users.ResetAccessFailedCountAsync(account!);
            return account;
        }

        await book.NoteAsync(
            account?.PracticeId ?? Guid.Empty,
            account?.PersonId,
            AccessEvent.SignInRefused,
            cancellation: context.RequestAborted
        );
        if (account is not null && isOpen && browser is null)
        {
            await RefusedAsync(account);
        }

        return null;
    }

    /// <summary>Whether the password of somebody who is signed in fits; so many tries a session.</summary>
    public async Task<bool> AgainAsync(Actor actor, string? password, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(actor);
        bool fits =
            actor.SessionId is { } session
            && limits.MayTry(session)
            && await accounts.OfAsync(actor.PersonId, cancellation) is { } account
            && await users.CheckPasswordAsync(account, password ?? "");
        if (!fits)
        {
            await book.NoteAsync(actor.PracticeId, actor.PersonId, AccessEvent.ConfirmRefused, cancellation: cancellation);
        }

        return fits;
    }

    /// <summary>Counts a refusal, and notes when it locks.</summary>
    public async Task RefusedAsync(SignInAccount account)
    {
        ArgumentNullException.ThrowIfNull(account);
        await users.AccessFailedAsync(account);
        if (await users.IsLockedOutAsync(account))
        {
            await book.NoteAsync(account.PracticeId, account.PersonId, AccessEvent.LockedOut);
        }
    }
}
