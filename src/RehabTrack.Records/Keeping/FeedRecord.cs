namespace RehabTrack.Records.Keeping;

/// <summary>A secret address under which the practice's booked rechecks can be read. The secret itself is kept nowhere.</summary>
internal sealed class FeedRecord : KeptRecord
{
    /// <summary>SHA-256 of the secret, hexadecimal.</summary>
    public required string SecretHash { get; set; }

    public Guid MadeById { get; set; }

    public DateTime MadeAt { get; set; }

    /// <summary>When it was taken back; null while it answers.</summary>
    public DateTime? RevokedAt { get; set; }

    public Guid? RevokedById { get; set; }
}
