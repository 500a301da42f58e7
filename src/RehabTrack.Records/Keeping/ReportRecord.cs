namespace RehabTrack.Records.Keeping;

/// <summary>
/// A report on a case as a vet released it for a referring vet: what it says is fixed on that day and never changes; append-only. It is
/// read behind a share link, which can be taken back.
/// </summary>
internal sealed class ReportRecord : KeptRecord
{
    public Guid CaseId { get; set; }

    public Guid HorseId { get; set; }

    /// <summary>The referring vet for whom it was made.</summary>
    public Guid PersonId { get; set; }

    /// <summary>The period beside the horse in which it was made: when it ends, nobody reads the report behind a link any more.</summary>
    public Guid HorseLinkId { get; set; }

    /// <summary>The practice's date of the release.</summary>
    public DateOnly Date { get; set; }

    public DateTime ReleasedAt { get; set; }

    public Guid ReleasedById { get; set; }

    /// <summary>All that it says, as JSON.</summary>
    public required string ContentJson { get; set; }
}
