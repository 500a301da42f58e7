namespace RehabTrack.Records.Keeping;

/// <summary>An address with which one person chooses a password, once.</summary>
internal sealed class InvitationRecord : SecretRecord
{
    public Guid PersonId { get; set; }

    public DateTime ExpiresAt { get; set; }

    public DateTime? UsedAt { get; set; }

    /// <summary>Whether it also takes the second step away, for who has lost the telephone.</summary>
    public bool TakesSecondStep { get; set; }
}
