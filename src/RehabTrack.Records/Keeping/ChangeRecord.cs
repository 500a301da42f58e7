namespace RehabTrack.Records.Keeping;

/// <summary>One line of the history; append-only, also for the database itself.</summary>
internal sealed class ChangeRecord
{
    public Guid Id { get; set; }

    public Guid PracticeId { get; set; }

    public DateTime At { get; set; }

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

    /// <summary>What changed, as it is.</summary>
    public required string AfterJson { get; set; }
}
