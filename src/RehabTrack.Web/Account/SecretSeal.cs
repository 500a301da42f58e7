using Microsoft.AspNetCore.DataProtection;

namespace RehabTrack.Web.Account;

/// <summary>Seals the keys of second steps: a copy of the database alone yields no codes.</summary>
public sealed class SecretSeal(IDataProtectionProvider protection)
{
    private readonly IDataProtector _protector = protection.CreateProtector("RehabTrack.SecondStepKey");

    /// <summary>The sealed text.</summary>
    public string Seal(string key) => _protector.Protect(key);

    /// <summary>The text; null when it was sealed with keys that are gone.</summary>
    public string? Open(string? sealedKey)
    {
        if (sealedKey is null)
        {
            return null;
        }

        try
        {
            return _protector.Unprotect(sealedKey);
        }
        catch (System.Security.Cryptography.CryptographicException)
        {
            return null;
        }
    }
}
