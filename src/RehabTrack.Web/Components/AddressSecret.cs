using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace RehabTrack.Web.Components;

/// <summary>The secret of an address that opens something without signing in: 256 random bits, shown once. Only its SHA-256 is kept.</summary>
/// <param name="Text">The secret as it stands in the address: 43 characters of base64url.</param>
public sealed record AddressSecret(string Text)
{
    private const int Bytes = 32;

    /// <summary>What is kept of it: SHA-256, 64 lower-case hexadecimal digits.</summary>
    public string Hash => HashOf(Text);

    /// <summary>A new secret.</summary>
    public static AddressSecret Make() => new(Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes)));

    /// <summary>What would be kept of a text that somebody asks with.</summary>
    public static string HashOf(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
}
