using System.Text;

namespace RehabTrack.Drills.Sheets;

/// <summary>Breaks a sheet in one of the ways in which files break: on a disk, in a mail, in a spreadsheet, under somebody's hands.</summary>
internal static class SheetBreaker
{
    private const int HugeCell = 200_000;

    private static readonly Func<Random, byte[], byte[]>[] Ways =
    [
        FlipBytes,
        CutOff,
        RepeatPart,
        (random, sheet) => Lines(random, sheet, SwapCells),
        (random, sheet) => Lines(random, sheet, (_, cell) => cell.Replace('.', ',')),
        (random, sheet) => Lines(random, sheet, PlantCell),
        (random, sheet) => Lines(random, sheet, DropOrDouble),
        MixLineEnds,
        (_, sheet) => Latin(sheet, Encoding.Unicode, withMark: true),
        (_, sheet) => Latin(sheet, Encoding.BigEndianUnicode, withMark: true),
        (_, sheet) => Latin(sheet, Encoding.Latin1, withMark: false),
        (_, sheet) => [0xEF, 0xBB, 0xBF, .. sheet],
        (_, sheet) => [0xFF, 0xFE, .. sheet],
        (random, sheet) => [.. sheet, (byte)random.Next(256), 0xC3],
        OtherSeparator,
        StrayQuotes,
        SwapHeadings,
    ];

    /// <summary>What is planted into a cell.</summary>
    private static readonly string[] Plants =
    [
        "NaN",
        "Infinity",
        "-Infinity",
        "1e308",
        "1e999",
        "-1",
        "0",
        "0x10",
        "1.2.3",
        "9999999999999999999999",
        "1,5",
        "½",
        "diffuse",
        "2026-02-30",
        "31.12.9999",
        "0001-01-01",
        "=1+1",
        "'=1+1",
        "\"",
        "\"\"\"",
        "a\"b",
        "a\nb",
        "\u202E\u200D",
        "🐴",
        "  ",
        "LH",
        "suspensory-ligament",
        "sep=;",
    ];

    /// <summary>The sheet, broken in one to four ways.</summary>
    public static byte[] Break(Random random, byte[] sheet)
    {
        byte[] broken = sheet;
        for (int times = random.Next(1, 5); times > 0; times--)
        {
            broken = Ways[random.Next(Ways.Length)](random, broken);
        }

        return broken;
    }

    private static byte[] FlipBytes(Random random, byte[] sheet)
    {
        byte[] flipped = [.. sheet];
        for (int times = random.Next(1, 20); times > 0 && flipped.Length > 0; times--)
        {
            flipped[random.Next(flipped.Length)] ^= (byte)(1 << random.Next(8));
        }

        return flipped;
    }

    private static byte[] CutOff(Random random, byte[] sheet) => sheet[..random.Next(sheet.Length + 1)];

    private static byte[] RepeatPart(Random random, byte[] sheet)
    {
        int from = random.Next(sheet.Length + 1);
        int to = random.Next(from, sheet.Length + 1);
        return [.. sheet[..to], .. sheet[from..]];
    }

    /// <summary>Changes a cell in some of the lines, as though commas were nothing but separators.</summary>
    private static byte[] Lines(Random random, byte[] sheet, Func<Random, string, string> change)
    {
        string[] lines = Encoding.UTF8.GetString(sheet).Split('\n');
        for (int times = random.Next(1, 6); times > 0; times--)
        {
            int line = random.Next(lines.Length);
            string[] cells = lines[line].Split(',');
            int cell = random.Next(cells.Length);
            cells[cell] = change(random, cells[cell]);
            lines[line] = string.Join(',', cells);
        }

        return Encoding.UTF8.GetBytes(string.Join('\n', lines));
    }

    private static string SwapCells(Random random, string cell) => random.Next(2) == 0 ? $"{cell},{cell}" : "";

    private static string PlantCell(Random random, string cell) =>
        random.Next(20) == 0 ? new string('x', HugeCell) : Plants[random.Next(Plants.Length)];

    private static string DropOrDouble(Random random, string cell) => random.Next(2) == 0 ? "" : cell + cell;

    private static byte[] MixLineEnds(Random random, byte[] sheet)
    {
        string[] ends = ["\r\n", "\r", "\n", "\n\n"];
        StringBuilder mixed = new();
        foreach (string line in Encoding.UTF8.GetString(sheet).Split('\n'))
        {
            mixed.Append(line).Append(ends[random.Next(ends.Length)]);
        }

        return Encoding.UTF8.GetBytes(mixed.ToString());
    }

    private static byte[] Latin(byte[] sheet, Encoding encoding, bool withMark) =>
        [.. withMark ? encoding.GetPreamble() : [], .. encoding.GetBytes(Encoding.UTF8.GetString(sheet))];

    private static byte[] OtherSeparator(Random random, byte[] sheet) =>
        Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(sheet).Replace(',', ";\t|"[random.Next(3)]));

    private static byte[] StrayQuotes(Random random, byte[] sheet)
    {
        string text = Encoding.UTF8.GetString(sheet);
        for (int times = random.Next(1, 4); times > 0; times--)
        {
            text = text.Insert(random.Next(text.Length + 1), "\"");
        }

        return Encoding.UTF8.GetBytes(text);
    }

    private static byte[] SwapHeadings(Random random, byte[] sheet)
    {
        string[] lines = Encoding.UTF8.GetString(sheet).Split('\n');
        string[] headings = lines[0].Split(',');
        random.Shuffle(headings);
        lines[0] = string.Join(',', headings);
        return Encoding.UTF8.GetBytes(string.Join('\n', lines));
    }
}
