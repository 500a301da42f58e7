namespace RehabTrack.Records.Keeping;

internal sealed class YardRecord : KeptRecord
{
    public required string Name { get; set; }

    public required string FoldedName { get; set; }

    public string? Phone { get; set; }

    public string? Address { get; set; }
}
