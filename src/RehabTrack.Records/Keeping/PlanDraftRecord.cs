namespace RehabTrack.Records.Keeping;

/// <summary>The plan of a horse as it is being written; it permits nothing until it is signed.</summary>
internal sealed class PlanDraftRecord : KeptRecord
{
    public Guid HorseId { get; set; }

    public required string ContentJson { get; set; }

    public Guid WrittenById { get; set; }

    public DateTime WrittenAt { get; set; }
}
