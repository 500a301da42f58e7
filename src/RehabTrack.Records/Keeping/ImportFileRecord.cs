namespace RehabTrack.Records.Keeping;

/// <summary>A file handed in and not yet imported.</summary>
internal sealed class ImportFileRecord : KeptRecord
{
    public required string FileName { get; set; }

    public required byte[] Content { get; set; }

    /// <summary>SHA-256 of the content, hexadecimal.</summary>
    public required string Checksum { get; set; }

    public Guid PersonId { get; set; }

    public DateTime HandedInAt { get; set; }

    public DateTime? AppliedAt { get; set; }
}
