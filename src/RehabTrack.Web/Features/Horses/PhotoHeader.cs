using System.Buffers.Binary;

namespace RehabTrack.Web.Features.Horses;

/// <summary>What the first bytes of a picture say, read before anything decodes it.</summary>
/// <param name="ContentType">image/jpeg or image/png.</param>
/// <param name="Width">Pixels across.</param>
/// <param name="Height">Pixels down.</param>
public sealed record PhotoHeader(string ContentType, int Width, int Height)
{
    private static readonly byte[] PngSignature = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>The header of a JPEG or PNG picture; null for anything else, or when it is cut off.</summary>
    public static PhotoHeader? Read(ReadOnlySpan<byte> bytes) => ReadPng(bytes) ?? ReadJpeg(bytes);

    private static PhotoHeader? ReadPng(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < 24 || !bytes.StartsWith(PngSignature) || !bytes[12..16].SequenceEqual("IHDR"u8))
        {
            return null;
        }

        return Sized("image/png", BinaryPrimitives.ReadInt32BigEndian(bytes[16..]), BinaryPrimitives.ReadInt32BigEndian(bytes[20..]));
    }

    private static PhotoHeader? ReadJpeg(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < 4 || bytes[0] != 0xFF || bytes[1] != 0xD8)
        {
            return null;
        }

        int at = 2;
        while (at + 9 < bytes.Length)
        {
            if (bytes[at] != 0xFF)
            {
                return null;
            }

            byte marker = bytes[at + 1];
            if (marker == 0xFF)
            {
                at++;
                continue;
            }

            // Markers that stand alone carry no length.
            if (marker is 0x01 or (>= 0xD0 and <= 0xD7))
            {
                at += 2;
                continue;
            }

            // A frame header (SOF), not a table (C4, CC) nor an extension (C8), carries the size.
            if (marker is >= 0xC0 and <= 0xCF and not 0xC4 and not 0xC8 and not 0xCC)
            {
                return Sized(
                    "image/jpeg",
                    BinaryPrimitives.ReadUInt16BigEndian(bytes[(at + 7)..]),
                    BinaryPrimitives.ReadUInt16BigEndian(bytes[(at + 5)..])
                );
            }

            int length = BinaryPrimitives.ReadUInt16BigEndian(bytes[(at + 2)..]);
            if (length < 2 || marker == 0xDA)
            {
                return null;
            }

            at += 2 + length;
        }

        return null;
    }

    private static PhotoHeader? Sized(string contentType, int width, int height) =>
        width > 0 && height > 0 ? new PhotoHeader(contentType, width, height) : null;
}
