using System.Security.Cryptography;
using Microsoft.AspNetCore.Identity;
using RehabTrack.Records.Accounts;

namespace RehabTrack.Web.Account;

/// <summary>An account that nobody has, with a password that nobody knows: what is checked where there is nothing to check.</summary>
public sealed class DecoyAccount(IPasswordHasher<SignInAccount> hasher)
{
    private const int Letters = 40;

    /// <summary>The account; written nowhere.</summary>
    public SignInAccount Account { get; } =
        new()
        {
            SignInName = "",
            FoldedSignInName = "",
            PasswordHash = hasher.HashPassword(null!, RandomNumberGenerator.GetString("abcdefghijklmnopqrstuvwxyz", Letters)),
        };
}
