namespace RehabTrack.Records.Keeping;

/// <summary>
/// One line of the trail: a change, or a note of who came in. Append-only, also for the database itself, and chained to the line before
/// it; what a line of a person's own says can be erased, and the chain still fits.
/// </summary>
internal sealed class ChangeRecord
{
    public Guid Id { get; set; }

    public Guid PracticeId { get; set; }

    /// <summary>Its place in the practice's trail, from 1, without gaps; null only until it is chained.</summary>
    public long? Number { get; set; }

    public DateTime At { get; set; }

    /// <summary>Who; empty when nobody was known.</summary>
    public Guid PersonId { get; set; }

    public Guid CommandId { get; set; }

    /// <summary>The use case that wrote.</summary>
    public required string UseCase { get; set; }

    /// <summary>The kind of record.</summary>
    public required string Kind { get; set; }

    public Guid RecordId { get; set; }

    /// <summary>The case it concerns; null when none.</summary>
    public Guid? CaseId { get; set; }

    /// <summary>What changed, as it was; null for a new record.</summary>
    public string? BeforeJson { get; set; }

    /// <summary>What changed, as it is; empty once it was erased.</summary>
    public required string AfterJson { get; set; }

    /// <summary>Hides what <see cref="BodyHash"/> was made of; null once that was erased.</summary>
    public byte[]? Salt { get; set; }

    /// <summary>Stands in the chain for before and after.</summary>
    public byte[]? BodyHash { get; set; }

    /// <summary>The hash of the line before; zeros for the first.</summary>
    public byte[]? PreviousHash { get; set; }

    /// <summary>The hash of this line.</summary>
    public byte[]? Hash { get; set; }
}
