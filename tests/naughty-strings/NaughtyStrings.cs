using System.Text.Json;

namespace RehabTrack.Naughty;

/// <summary>Text that has broken programs before. Source: the Big List of Naughty Strings, see README.md beside it.</summary>
internal static class NaughtyStrings
{
    private const int Line = 180;
    private const int Page = 3_900;

    /// <summary>What the list does not have: cells that a spreadsheet would run (OWASP ASVS 5.0, 1.2.10), marks of order, elements.</summary>
    private static readonly string[] Own =
    [
        "=1+1",
        "+1",
        "-1",
        "@SUM(A1)",
        "\t=1+1",
        "\r=1+1",
        "'=1+1",
        "''",
        "=HYPERLINK(\"http://stable.example\",\"here\")",
        "a\"b",
        "a;b,c\td",
        "first line\nsecond line",
        "first line\r\nsecond line",
        "BEGIN:VEVENT\r\nEND:VCALENDAR",
        "a\\nb\\,c\\;d",
        "<b id=planted>bold</b>",
        "\"><img id=planted src=x onerror=planted()>",
        "</script><script id=planted>planted()</script>",
        "{{planted}} {0} {1:N}",
        "🐴\u200D♂️ Ä ß ﬁ",
    ];

    /// <summary>Every string, each once.</summary>
    public static IReadOnlyList<string> All { get; } = [.. Read().Concat(Own).Distinct(StringComparer.Ordinal)];

    /// <summary>The same strings, several in one, so that each fits a line of 200 letters; one that is longer stands alone.</summary>
    public static IReadOnlyList<string> Packs { get; } = [.. Pack(Line)];

    /// <summary>The same strings, many in one: for a text that may be as long as a page, 4,000 letters.</summary>
    public static IReadOnlyList<string> Pages { get; } = [.. Pack(Page)];

    private static string[] Read() =>
        JsonSerializer.Deserialize<string[]>(File.ReadAllText(RepositoryFolder.OfPackage("blns", "resources", "blns.json")))!;

    private static IEnumerable<string> Pack(int longest)
    {
        string pack = "";
        foreach (string text in All)
        {
            if (pack.Length > 0 && pack.Length + text.Length >= longest)
            {
                yield return pack;
                pack = "";
            }

            pack = pack.Length == 0 ? text : $"{pack}|{text}";
        }

        yield return pack;
    }
}
