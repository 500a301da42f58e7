namespace RehabTrack.Records.Keeping;

/// <summary>When a person last opened the page with the permit of a horse.</summary>
internal sealed class PermitLookRecord : KeptRecord
{
    public Guid HorseId { get; set; }

    public Guid PersonId { get; set; }

    public DateTime LastAt { get; set; }
}
