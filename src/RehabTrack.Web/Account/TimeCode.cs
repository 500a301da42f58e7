using OtpNet;

namespace RehabTrack.Web.Account;

/// <summary>The six figures that an app on the telephone shows, new every 30 seconds (RFC 6238, TOTP).</summary>
public static class TimeCode
{
    private const int KeyBytes = 20;

    /// <summary>A new key, in the letters of RFC 4648 base32: 160 bits, as RFC 4226 asks for.</summary>
    public static string NewKey() => Base32Encoding.ToString(KeyGeneration.GenerateRandomKey(KeyBytes));

    /// <summary>The address that an app reads out of the scanned square.</summary>
    public static string AddressOf(string key, string signInName) =>
        new OtpUri(OtpType.Totp, key, signInName, Wording.Common.AppName).ToString();

    /// <summary>The number of the 30-second step whose code it is; null when it is none of now, of the one before or of the one after.</summary>
    /// <param name="key">Base32; null when there is none.</param>
    /// <param name="typed">What was typed; spaces do not count.</param>
    /// <param name="now">The moment.</param>
    /// <param name="after">The step whose code was taken last: it and those before it are not taken again.</param>
    public static long? StepOf(string? key, string? typed, DateTime now, long after)
    {
        string code = string.Concat((typed ?? "").Where(letter => !char.IsWhiteSpace(letter)));
        return
            key is not null
            && new Totp(Base32Encoding.ToBytes(key)).VerifyTotp(now, code, out long step, VerificationWindow.RfcSpecifiedNetworkDelay)
            && step > after
            ? step
            : null;
    }
}
