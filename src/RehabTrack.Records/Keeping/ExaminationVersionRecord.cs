namespace RehabTrack.Records.Keeping;

/// <summary>An examination as it was signed, whole; append-only.</summary>
internal sealed class ExaminationVersionRecord
{
    public Guid Id { get; set; }

    public Guid PracticeId { get; set; }

    public Guid ExaminationId { get; set; }

    /// <summary>1 for what was signed or imported first.</summary>
    public int Number { get; set; }

    public DateTime At { get; set; }

    public Guid PersonId { get; set; }

    /// <summary>Why it was amended; null for the first.</summary>
    public string? Reason { get; set; }

    public required string ContentJson { get; set; }
}
