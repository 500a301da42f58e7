namespace RehabTrack.Records.Horses;

/// <summary>A horse's photo.</summary>
/// <param name="ContentType">As "image/jpeg".</param>
/// <param name="Content">The bytes.</param>
/// <param name="Checksum">SHA-256, hexadecimal: for caching.</param>
public sealed record HorsePhotoView(string ContentType, byte[] Content, string Checksum);
