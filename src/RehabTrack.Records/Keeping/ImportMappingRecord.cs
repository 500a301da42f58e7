namespace RehabTrack.Records.Keeping;

/// <summary>How the practice reads a sheet with headings of its own.</summary>
internal sealed class ImportMappingRecord : KeptRecord
{
    public required string Fingerprint { get; set; }

    public required string MappingJson { get; set; }
}
