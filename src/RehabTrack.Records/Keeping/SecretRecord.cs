namespace RehabTrack.Records.Keeping;

/// <summary>An address that opens something to whoever holds its secret. The secret itself is kept nowhere.</summary>
internal abstract class SecretRecord : KeptRecord
{
    private const int HashDigits = 64;

    /// <summary>SHA-256 of the secret, 64 lower-case hexadecimal digits.</summary>
    public required string SecretHash { get; set; }

    public Guid MadeById { get; set; }

    public DateTime MadeAt { get; set; }

    /// <summary>When it was taken back; null while it answers.</summary>
    public DateTime? RevokedAt { get; set; }

    public Guid? RevokedById { get; set; }

    /// <summary>The hash, when it has the form of one.</summary>
    /// <exception cref="ArgumentException">It has not: perhaps it is the secret itself, which must not be kept.</exception>
    public static string CheckedHash(string hash) =>
        hash.Length == HashDigits && hash.All(char.IsAsciiHexDigitLower)
            ? hash
            : throw new ArgumentException("The SHA-256 of the secret is needed.", nameof(hash));

    /// <summary>Takes it back: from the next question on it answers no more.</summary>
    public void Revoke(DateTime now, Guid personId)
    {
        RevokedAt = now;
        RevokedById = personId;
    }
}
