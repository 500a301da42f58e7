namespace RehabTrack.Records.Keeping;

/// <summary>A command that was carried out: asked again, it answers the same and writes nothing.</summary>
internal sealed class AppliedCommandRecord
{
    public Guid PracticeId { get; set; }

    public Guid CommandId { get; set; }

    public required string UseCase { get; set; }

    public Guid PersonId { get; set; }

    public DateTime At { get; set; }

    /// <summary>What was answered; empty once it was erased.</summary>
    public required string ResultJson { get; set; }
}
