namespace RehabTrack.Records.Keeping;

/// <summary>A vet who stands in for another, in their own name, from a day to a day.</summary>
internal sealed class CoverRecord : KeptRecord
{
    public Guid VetId { get; set; }

    public Guid CoveringVetId { get; set; }

    public DateOnly From { get; set; }

    /// <summary>The last day.</summary>
    public DateOnly To { get; set; }
}
