using System.Security.Cryptography;

namespace RehabTrack.Web.Account;

/// <summary>Codes that people copy by hand: no letters that are taken for figures, in groups of four.</summary>
public static class PaperCode
{
    private const string Letters = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789";
    private const int Length = 4;

    /// <summary>A new one; each group of 4 of 32 letters brings 20 random bits.</summary>
    public static string Make(int groups) =>
        string.Join('-', Enumerable.Range(0, groups).Select(_ => RandomNumberGenerator.GetString(Letters, Length)));

    /// <summary>What counts of a typed one: case, spaces and dashes do not.</summary>
    public static string Bare(string? typed) => string.Concat((typed ?? "").Where(char.IsLetterOrDigit)).ToUpperInvariant();
}
