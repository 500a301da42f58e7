using System.Security.Cryptography;

namespace RehabTrack.Records.Keeping;

/// <summary>Files that are kept as rows, each beside the checksum of when it came in.</summary>
internal static class KeptFiles
{
    /// <summary>Whether a record keeps a file that is not the one that came in.</summary>
    public static bool IsSpoiled(object record) =>
        record switch
        {
            HorsePhotoRecord photo => Differs(photo.Content, photo.Checksum),
            ImportFileRecord file => Differs(file.Content, file.Checksum),
            _ => false,
        };

    private static bool Differs(byte[] content, string checksum) =>
        !string.Equals(Convert.ToHexStringLower(SHA256.HashData(content)), checksum, StringComparison.OrdinalIgnoreCase);
}
