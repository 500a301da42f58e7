namespace RehabTrack.Records.Keeping;

/// <summary>One sign-in in one browser. What happens to it is told in the trail by name; the record itself only answers whether it lives.</summary>
internal sealed class SessionRecord
{
    public Guid Id { get; set; }

    public Guid PracticeId { get; set; }

    public Guid PersonId { get; set; }

    /// <summary>What the browser calls itself, for the person to know it again.</summary>
    public required string Browser { get; set; }

    public DateTime BegunAt { get; set; }

    /// <summary>When somebody last asked with it, to the minute.</summary>
    public DateTime LastSeenAt { get; set; }

    public DateTime? EndedAt { get; set; }

    /// <summary>Until when one signature may be given; null while the person was not asked afresh.</summary>
    public DateTime? ConfirmedUntil { get; set; }

    /// <summary>A session of the demo, where nobody has a password to be asked for.</summary>
    public bool IsDemo { get; set; }
}
