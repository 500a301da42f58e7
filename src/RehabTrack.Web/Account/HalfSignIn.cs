using Microsoft.AspNetCore.DataProtection;
using RehabTrack.Records.Accounts;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Account;

/// <summary>
/// Who has shown a password and not yet the second step. It opens nothing but the pages of the second step, for some minutes, and counts no more
/// once the password or the second step was changed.
/// </summary>
public sealed class HalfSignIn(IDataProtectionProvider protection, AppMode mode, AccountStore accounts)
{
    private static readonly TimeSpan Time = new SignInSettings().StepTime;
    private readonly SealedCookie<Carried> _cookie = new(protection, mode, "half");

    /// <summary>Begins it; with a key, for somebody who is in already and changes the second step.</summary>
    public void Begin(HttpContext context, SignInAccount account, string? returnUrl, string? newKey = null)
    {
        ArgumentNullException.ThrowIfNull(account);
        Write(context, account, new Carried(account.PersonId, "", returnUrl, newKey, false));
    }

    /// <summary>Goes on with it: with a key that is not confirmed yet, or with the second step passed.</summary>
    public void GoOn(HttpContext context, Half half, string? newKey, bool isPassed)
    {
        ArgumentNullException.ThrowIfNull(half);
        Write(context, half.Account, new Carried(half.Account.PersonId, "", half.ReturnUrl, newKey, isPassed));
    }

    /// <summary>Who it is; null when nobody is half-way in.</summary>
    public async Task<Half?> FindAsync(HttpContext context) =>
        _cookie.Read(context) is { } carried
        && await accounts.OfAsync(carried.PersonId, context.RequestAborted) is { } account
        && account.SecurityStamp == carried.Stamp
            ? new Half(account, carried.ReturnUrl, carried.NewKey, carried.IsPassed)
            : null;

    /// <summary>Ends it.</summary>
    public void End(HttpContext context) => _cookie.Clear(context);

    private void Write(HttpContext context, SignInAccount account, Carried carried) =>
        _cookie.Write(context, carried with { Stamp = account.SecurityStamp }, Time, isKept: false);

    private sealed record Carried(Guid PersonId, string Stamp, string? ReturnUrl, string? NewKey, bool IsPassed);
}
