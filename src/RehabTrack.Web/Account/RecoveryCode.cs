using RehabTrack.Records.Accounts;
using RehabTrack.Web.Components;

namespace RehabTrack.Web.Account;

/// <summary>
/// What opens once in place of the telephone: shown when it is made, kept as SHA-256. 120 random bits: from 112 on OWASP ASVS 5.0, 6.5.2, lets a
/// plain hash keep it (read from memory).
/// </summary>
public static class RecoveryCode
{
    private const int Codes = 10;
    private const int Groups = 6;

    /// <summary>Gives an account new ones instead of all that are left; not yet written.</summary>
    /// <returns>As they are shown, this once.</returns>
    public static IReadOnlyList<string> Renew(SignInAccount account)
    {
        ArgumentNullException.ThrowIfNull(account);
        string[] codes = [.. Enumerable.Range(0, Codes).Select(_ => PaperCode.Make(Groups))];
        account.RecoveryHashes = string.Join(' ', codes.Select(HashOf));
        return codes;
    }

    /// <summary>Takes one away from those that are left, not yet written; false when it is none of them.</summary>
    public static bool TakeAway(SignInAccount account, string? typed)
    {
        ArgumentNullException.ThrowIfNull(account);
        string[] left = account.RecoveryHashes.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        string hash = HashOf(typed);
        string[] after = [.. left.Where(kept => kept != hash)];
        account.RecoveryHashes = string.Join(' ', after);
        return after.Length < left.Length;
    }

    private static string HashOf(string? code) => AddressSecret.HashOf(PaperCode.Bare(code));
}
