using RehabTrack.Records.Horses;

namespace RehabTrack.Records.Keeping;

/// <summary>
/// A secret address under which an owner reads of one horse, a trainer of all the horses they train in one yard, or a referring vet one report,
/// without signing in.
/// </summary>
internal sealed class ShareLinkRecord : SecretRecord
{
    /// <summary>What is written where a link is opened or tried, without a line in the history and without a new version.</summary>
    public static IReadOnlyList<string> NotedAtTheDoor { get; } = [nameof(LastSeenAt), nameof(OpenNotedAt), nameof(RefusalNotedAt)];

    /// <summary>For whom it was made.</summary>
    public Guid PersonId { get; set; }

    /// <summary>What the person is to the horse or horses that it opens; it opens nothing else.</summary>
    public HorseRelation Relation { get; set; }

    /// <summary>The one horse; null for a trainer's, which opens all the horses they train in a yard.</summary>
    public Guid? HorseId { get; set; }

    /// <summary>The yard of a trainer's link; null for horses that stand in none, and for the others'.</summary>
    public Guid? YardId { get; set; }

    /// <summary>The period beside that horse to which it is bound: when it ends, so does the link. Null where no one horse is meant.</summary>
    public Guid? HorseLinkId { get; set; }

    /// <summary>The one report that a referring vet's link opens; null for the others'.</summary>
    public Guid? ReportId { get; set; }

    /// <summary>From then on it answers no more.</summary>
    public DateTime ExpiresAt { get; set; }

    /// <summary>When it was last opened; null when never. Kept to the minute, without a line in the history.</summary>
    public DateTime? LastSeenAt { get; set; }

    /// <summary>When the trail last noted that it was opened; null when never.</summary>
    public DateTime? OpenNotedAt { get; set; }

    /// <summary>When the trail last noted that it was tried although it is dead; null when never.</summary>
    public DateTime? RefusalNotedAt { get; set; }
}
