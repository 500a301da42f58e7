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
        TryStanding standing = account is null ? TryStanding.Refused : await MayTryAsync(context, account);
        // A locked account's own hash is not asked: how long it takes must not tell that there is one.
        SignInAccount asked = standing != TryStanding.Refused && account!.PasswordHash is not null ? account : decoy.Account;
        bool fits = await users.CheckPasswordAsync(asked, password ?? "") && asked == account;
        if (fits && await accounts.PersonAsync(account!, context.RequestAborted) is not null)
        {
            // Half of the way in wipes no refusals out: who knows the password would have tries without end at the second step.
            if (!account!.HasSecondStep)
            {
                await users.ResetAccessFailedCountAsync(account);
            }

            return account;
        }

        await book.NoteAsync(
            account?.PracticeId ?? Guid.Empty,
            account?.PersonId,
            AccessEvent.SignInRefused,
            cancellation: context.RequestAborted
        );
        if (account is not null)
        {
            await CountRefusalAsync(account, standing);
        }

        return null;
    }

    /// <summary>Whether somebody may try to come in with an account now; counts the try of a browser that the account knows.</summary>
    public async Task<TryStanding> MayTryAsync(HttpContext context, SignInAccount account)
    {
        ArgumentNullException.ThrowIfNull(account);
        if (known.Find(context, account.PersonId) is { } browser)
        {
            return limits.MayTry(browser) ? TryStanding.Known : TryStanding.Refused;
        }

        return await users.IsLockedOutAsync(account) ? TryStanding.Refused : TryStanding.Stranger;
    }

    /// <summary>Counts a refusal of a stranger, and notes when it locks.</summary>
    public async Task CountRefusalAsync(SignInAccount account, TryStanding standing)
    {
        ArgumentNullException.ThrowIfNull(account);
        if (standing != TryStanding.Stranger)
        {
            return;
        }

        // Each of several at once counts: whoever finds that another wrote in between counts on what that one wrote.
        SignInAccount? counted = account;
        while (counted is not null && !(await users.AccessFailedAsync(counted)).Succeeded)
        {
            counted = await accounts.OfAsync(account.PersonId);
        }

        if (counted is not null && await users.IsLockedOutAsync(counted))
        {
            await book.NoteAsync(account.PracticeId, account.PersonId, AccessEvent.LockedOut);
        }
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
}
