using System.Security.Cryptography;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;
using RehabTrack.Records.Accounts;

namespace RehabTrack.Web.Account;

/// <summary>
/// An account that nobody has, with a password that nobody knows: what is checked where there is nothing to check. One of a server: to make it
/// anew for each question would take the time by which a name that is unknown could be told.
/// </summary>
public sealed class DecoyAccount(IOptions<PasswordHasherOptions> options)
{
    private const int Letters = 40;

    /// <summary>The account; written nowhere.</summary>
    public SignInAccount Account { get; } =
        new()
        {
            SignInName = "",
            FoldedSignInName = "",
            PasswordHash = new PasswordHasher<SignInAccount>(options).HashPassword(
                null!,
                RandomNumberGenerator.GetString("abcdefghijklmnopqrstuvwxyz", Letters)
            ),
        };
}
