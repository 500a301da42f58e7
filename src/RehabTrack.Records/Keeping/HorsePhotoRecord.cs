namespace RehabTrack.Records.Keeping;

internal sealed class HorsePhotoRecord : KeptRecord
{
    public Guid HorseId { get; set; }

    public required string ContentType { get; set; }

    public required byte[] Content { get; set; }

    /// <summary>SHA-256 of the content, hexadecimal.</summary>
    public required string Checksum { get; set; }
}
