using System.Text;
using RehabTrack.Exchange.Rows;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Sheets;

/// <summary>Finds out how a file is written, or why it is no sheet, in one pass and in little memory.</summary>
public static class SheetProbe
{
    private const int ChunkBytes = 64 * 1024;
    private static readonly Encoding Windows1252 = CodePagesEncodingProvider.Instance.GetEncoding(1252)!;
    private static readonly Encoding StrictUtf8 = new UTF8Encoding(false, true);

    private static readonly (byte[] Start, string Code)[] Signatures =
    [
        ("PK\u0003\u0004"u8.ToArray(), "file-is-workbook"),
        ([0xD0, 0xCF, 0x11, 0xE0], "file-is-workbook"),
        ("%PDF"u8.ToArray(), "file-is-pdf"),
        ([0x89, 0x50, 0x4E, 0x47], "file-is-picture"),
        ([0xFF, 0xD8, 0xFF], "file-is-picture"),
        ("GIF8"u8.ToArray(), "file-is-picture"),
        ("II*\0"u8.ToArray(), "file-is-picture"),
        ("MM\0*"u8.ToArray(), "file-is-picture"),
    ];

    /// <summary>Looks over a file. Never throws over its content.</summary>
    /// <param name="stream">A stream that can seek; left at its start.</param>
    public static SheetInspection Inspect(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        stream.Position = 0;
        byte[] chunk = new byte[ChunkBytes];
        int filled = stream.ReadAtLeast(chunk, ChunkBytes, throwOnEndOfStream: false);
        byte[] head = chunk[..filled];
        foreach ((byte[] start, string code) in Signatures)
        {
            if (head.AsSpan().StartsWith(start))
            {
                return Refused(code, stream.Length);
            }
        }

        Encoding? marked = OfMark(head);
        Encoding encoding = marked ?? Encoding.UTF8;
        List<Problem> cautions = [];
        if (marked is not UnicodeEncoding)
        {
            ByteCount count = CountBytes(stream, chunk, filled);
            if (count.Nul > 0 || count.Control > stream.Length / 1000)
            {
                return Refused("file-is-binary", stream.Length);
            }

            if (!count.ValidUtf8)
            {
                encoding = Windows1252;
                cautions.Add(new("", "encoding-guessed"));
            }
        }

        stream.Position = 0;
        string sample = encoding.GetString(head).TrimStart('\uFEFF');
        if (sample.All(letter => char.IsWhiteSpace(letter) || letter is ';' or ',' or '"' or '\uFEFF') && stream.Length <= ChunkBytes)
        {
            return Refused("file-empty", stream.Length);
        }

        return new SheetInspection(new SheetFormat(encoding, FindSeparator(sample)), null, cautions, stream.Length);
    }

    private static SheetInspection Refused(string code, long bytes) => new(null, new Problem("", code), [], bytes);

    private static Encoding? OfMark(ReadOnlySpan<byte> head) =>
        head switch
        {
            [0xEF, 0xBB, 0xBF, ..] => Encoding.UTF8,
            [0xFF, 0xFE, ..] => Encoding.Unicode,
            [0xFE, 0xFF, ..] => Encoding.BigEndianUnicode,
            _ => null,
        };

    private static ByteCount CountBytes(Stream stream, byte[] chunk, int filled)
    {
        Decoder decoder = StrictUtf8.GetDecoder();
        char[] characters = new char[ChunkBytes + 4];
        ByteCount count = new(0, 0, ValidUtf8: true);
        while (filled > 0)
        {
            ReadOnlySpan<byte> bytes = chunk.AsSpan(0, filled);
            int nul = bytes.Count((byte)0);
            int control = 0;
            foreach (byte value in bytes)
            {
                control += value is < 0x20 and not (>= 0x09 and <= 0x0D) ? 1 : 0;
            }

            count = new(count.Nul + nul, count.Control + control, count.ValidUtf8 && IsUtf8(decoder, bytes, characters));
            filled = stream.ReadAtLeast(chunk, ChunkBytes, throwOnEndOfStream: false);
        }

        return count with
        {
            ValidUtf8 = count.ValidUtf8 && IsUtf8(decoder, [], characters, flush: true),
        };
    }

    private static bool IsUtf8(Decoder decoder, ReadOnlySpan<byte> bytes, char[] characters, bool flush = false)
    {
        try
        {
            decoder.GetChars(bytes, characters, flush);
            return true;
        }
        catch (DecoderFallbackException)
        {
            return false;
        }
    }

    /// <summary>The separator under which most headings are known; where none is known, the one that yields most cells.</summary>
    private static char FindSeparator(string sample)
    {
        if (SheetRecordReader.SeparatorLine(FirstLine(sample)) is { } said)
        {
            return said;
        }

        char best = ';';
        (int Known, int Cells) most = (-1, -1);
        foreach (char separator in ";\t,")
        {
            using SheetRecordReader reader = new(new StringReader(sample), separator);
            if (!reader.Read())
            {
                continue;
            }

            (int Known, int Cells) found = (
                reader.Record.Cells.Count(cell => SheetColumns.Find(cell) is not null),
                reader.Record.Cells.Count
            );
            if (found.CompareTo(most) > 0)
            {
                most = found;
                best = separator;
            }
        }

        return best;
    }

    private static string FirstLine(string sample)
    {
        int end = sample.AsSpan().IndexOfAny('\r', '\n');
        return end < 0 ? sample : sample[..end];
    }

    private readonly record struct ByteCount(long Nul, long Control, bool ValidUtf8);
}
