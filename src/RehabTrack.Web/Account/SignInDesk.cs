using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Identity;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.History;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Account;

/// <summary>The steps from a password to a session: password, second step, and the cookie at the end.</summary>
public sealed class SignInDesk(
    UserManager<SignInAccount> users,
    AccountStore accounts,
    SessionDoor sessions,
    AccessBook book,
    PasswordCheck passwords,
    KnownBrowsers known,
    HalfSignIn half,
    SecretSeal seal,
    SignInLimits limits,
    SecondStepPolicy policy,
    TimeProvider time,
    AppMode mode
)
{
    /// <summary>Where the code is asked for.</summary>
    public const string CodeAddress = "/sign-in/code";

    /// <summary>Where a second step is set up.</summary>
    public const string SecondStepAddress = "/sign-in/second-step";

    /// <summary>Whether the address from which it comes may try once more.</summary>
    public bool MayTry(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        return limits.MayTry(context.Connection.RemoteIpAddress);
    }

    /// <summary>First step: name and password.</summary>
    public async Task<SignInStep> PasswordAsync(HttpContext context, string? name, string? password, string? returnUrl)
    {
        if (!MayTry(context))
        {
            return SignInStep.Refused("sign-in-busy");
        }

        return await passwords.ByNameAsync(context, name, password) is { } account
            ? await AfterPasswordAsync(context, account, returnUrl)
            : SignInStep.Refused("sign-in-refused");
    }

    /// <summary>What follows once somebody has shown or just chosen a password.</summary>
    public async Task<SignInStep> AfterPasswordAsync(HttpContext context, SignInAccount account, string? returnUrl)
    {
        ArgumentNullException.ThrowIfNull(account);
        if (account.HasSecondStep)
        {
            half.Begin(context, account, returnUrl);
            return SignInStep.To(CodeAddress);
        }

        if (await accounts.PersonAsync(account, context.RequestAborted) is not { } person)
        {
            return SignInStep.Refused("sign-in-refused");
        }

        if (policy.Asks(person.Role))
        {
            half.Begin(context, account, returnUrl);
            return SignInStep.To(SecondStepAddress);
        }

        return await InAsync(context, person, returnUrl);
    }

    /// <summary>Second step: the code of the moment, or one of the recovery codes.</summary>
    public async Task<SignInStep> CodeAsync(HttpContext context, Half here, string? typed)
    {
        ArgumentNullException.ThrowIfNull(here);
        if (!MayTry(context))
        {
            return SignInStep.Refused("sign-in-busy");
        }

        SignInAccount account = here.Account;
        TryStanding standing = await passwords.MayTryAsync(context, account);
        if (
            standing == TryStanding.Refused
            || !await TakesAsync(account, typed)
            || await accounts.PersonAsync(account, context.RequestAborted) is not { } person
        )
        {
            await book.NoteAsync(account.PracticeId, account.PersonId, AccessEvent.SecondStepRefused, cancellation: context.RequestAborted);
            await passwords.CountRefusalAsync(account, standing);
            return SignInStep.Refused("code-refused");
        }

        await book.NoteAsync(account.PracticeId, account.PersonId, AccessEvent.SecondStepPassed, cancellation: context.RequestAborted);
        return await InAsync(context, person, here.ReturnUrl);
    }

    /// <summary>Confirms a new second step by the first code of its key: everything that was begun without it ends.</summary>
    /// <returns>The recovery codes, shown this once; null when the code is not one of the key.</returns>
    public async Task<IReadOnlyList<string>?> NewSecondStepAsync(HttpContext context, Half here, string? typed)
    {
        ArgumentNullException.ThrowIfNull(here);
        SignInAccount account = here.Account;
        if (!MayTry(context) || here.NewKey is null || TimeCode.StepOf(here.NewKey, typed, time.GetUtcNow().UtcDateTime, 0) is not { } step)
        {
            return null;
        }

        account.LastTimeStep = step;
        account.SealedKey = seal.Seal(here.NewKey);
        account.HasSecondStep = true;
        IReadOnlyList<string> codes = RecoveryCode.Renew(account);
        if (!(await users.UpdateSecurityStampAsync(account)).Succeeded)
        {
            return null;
        }

        await sessions.EndAllAsync(account.PracticeId, account.PersonId, context.RequestAborted);
        await book.NoteAsync(account.PracticeId, account.PersonId, AccessEvent.SecondStepChanged, cancellation: context.RequestAborted);
        half.GoOn(context, here, null, isPassed: true);
        return codes;
    }

    /// <summary>New recovery codes instead of those that are left.</summary>
    /// <returns>The codes, shown this once; null when the account was changed elsewhere meanwhile.</returns>
    public async Task<IReadOnlyList<string>?> NewRecoveryCodesAsync(HttpContext context, SignInAccount account)
    {
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(account);
        IReadOnlyList<string> codes = RecoveryCode.Renew(account);
        if (!(await users.UpdateAsync(account)).Succeeded)
        {
            return null;
        }

        await book.NoteAsync(account.PracticeId, account.PersonId, AccessEvent.SecondStepChanged, cancellation: context.RequestAborted);
        return codes;
    }

    /// <summary>Goes in after a second step was set up; what was carried until now opens nothing a second time.</summary>
    public async Task<SignInStep> FinishAsync(HttpContext context, Half here)
    {
        ArgumentNullException.ThrowIfNull(here);
        return
            here.IsPassed
            && await accounts.PersonAsync(here.Account, context.RequestAborted) is { } person
            && (await users.UpdateSecurityStampAsync(here.Account)).Succeeded
            ? await InAsync(context, person, here.ReturnUrl)
            : SignInStep.Refused("sign-in-refused");
    }

    /// <summary>Changes the password of somebody who is signed in: every session ends, and a new one begins in this browser.</summary>
    public async Task<SignInStep> ChangePasswordAsync(HttpContext context, Actor actor, string password)
    {
        ArgumentNullException.ThrowIfNull(actor);
        SignInAccount account =
            await accounts.OfAsync(actor.PersonId, context.RequestAborted)
            ?? throw new InvalidOperationException("Nobody's password is changed.");
        account.PasswordHash = users.PasswordHasher.HashPassword(account, password);
        IdentityResult changed = await users.UpdateSecurityStampAsync(account);
        if (!changed.Succeeded)
        {
            return SignInStep.Refused(ChangedMeanwhile.Code);
        }

        await sessions.EndAllAsync(actor.PracticeId, actor.PersonId, context.RequestAborted);
        await book.NoteAsync(actor.PracticeId, actor.PersonId, AccessEvent.PasswordChanged, cancellation: context.RequestAborted);
        return await InAsync(context, actor with { SessionId = null }, "/account");
    }

    /// <summary>Gives the cookie of a new session; the one that this browser had before ends.</summary>
    public async Task<SignInStep> InAsync(HttpContext context, Actor person, string? returnUrl)
    {
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(person);
        if (ActorClaims.Read(context.User) is { SessionId: not null } before)
        {
            await sessions.EndAsync(before, context.RequestAborted);
        }

        Actor actor = await sessions.BeginAsync(
            person,
            BrowserName.Of(context.Request.Headers.UserAgent),
            mode.IsDemo,
            context.RequestAborted
        );
        await context.SignInAsync(CookieAuthenticationDefaults.AuthenticationScheme, ActorClaims.Write(actor));
        half.End(context);
        if (!mode.IsDemo)
        {
            known.Remember(context, actor.PersonId);
        }

        bool mayReturn = RightsTable.IsStaff(actor.Role) || returnUrl == "/account";
        return SignInStep.To(mayReturn && LocalAddress.Is(returnUrl) ? returnUrl! : HomeOf.Person(actor.Role));
    }

    private async Task<bool> TakesAsync(SignInAccount account, string? typed)
    {
        bool takes = TimeCode.StepOf(seal.Open(account.SealedKey), typed, time.GetUtcNow().UtcDateTime, account.LastTimeStep) is { } step
            ? TakeStep(account, step)
            : RecoveryCode.TakeAway(account, typed);
        if (!takes)
        {
            return false;
        }

        account.FailedCount = 0;
        // Two who send the same code at once: the one who writes second finds that somebody wrote in between.
        return (await users.UpdateAsync(account)).Succeeded;
    }

    private static bool TakeStep(SignInAccount account, long step)
    {
        account.LastTimeStep = step;
        return true;
    }
}
