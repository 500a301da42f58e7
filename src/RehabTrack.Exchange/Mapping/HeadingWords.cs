using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Mapping;

/// <summary>Takes headings apart: the words that say what a column means, the unit, the date. Words stand in <c>shared/column-synonyms.json</c>.</summary>
internal static partial class HeadingWords
{
    private const int LongestHeading = 120;
    private static readonly string[] Units = ["cm", "mm", "cm2", "mm2", "cm3"];
    private static readonly Dictionary<string, string> ColumnOfWords = ReadWords();

    /// <summary>The column that a heading stands for, with how sure that is from 0 to 1; null for none.</summary>
    public static (string Column, double Certainty)? Find(string heading)
    {
        string[] words = heading.Length > LongestHeading ? [] : Words(heading);
        if (words.Length == 0)
        {
            return null;
        }

        if (ColumnOfWords.TryGetValue(Joined(words), out string? column))
        {
            return (column, 1);
        }

        // The longest known run of words decides: "mean thickness (mm)" is a thickness.
        for (int length = words.Length - 1; length > 0; length--)
        {
            for (int start = 0; start + length <= words.Length; start++)
            {
                if (ColumnOfWords.TryGetValue(Joined(words[start..(start + length)]), out column))
                {
                    return (column, (double)length / words.Length * 0.9);
                }
            }
        }

        return null;
    }

    /// <summary>The unit that a heading names; null when it names none.</summary>
    public static MappedUnit? UnitOf(string heading) =>
        Unit().Match(heading.Length > LongestHeading ? "" : heading) is { Success: true } match
            ? match.Groups["small"].Success
                ? MappedUnit.Millimetre
                : MappedUnit.Centimetre
            : null;

    /// <summary>The date in a heading and what remains of it; null when there is none.</summary>
    public static (string Date, string Remainder)? DateIn(string heading)
    {
        Match match = Date().Match(heading.Length > LongestHeading ? "" : heading);
        return match.Success
            ? (match.Value, heading.Remove(match.Index, match.Length).Trim(' ', '-', '–', '_', '/', ':', ',', '(', ')'))
            : null;
    }

    private static string[] Words(string heading)
    {
        StringBuilder plain = new();
        foreach (char letter in heading.Replace("ß", "ss", StringComparison.Ordinal).Normalize(NormalizationForm.FormD))
        {
            if (letter is '²' or '³')
            {
                plain.Append(letter == '²' ? '2' : '3');
            }
            else if (letter == '%')
            {
                plain.Append(" percent ");
            }
            else if (CharUnicodeInfo.GetUnicodeCategory(letter) != UnicodeCategory.NonSpacingMark)
            {
                plain.Append(char.IsLetterOrDigit(letter) ? char.ToLowerInvariant(letter) : ' ');
            }
        }

        return
        [
            .. plain
                .ToString()
                .Split(' ', StringSplitOptions.RemoveEmptyEntries)
                .Where(word => !Units.Contains(word, StringComparer.Ordinal)),
        ];
    }

    private static string Joined(IEnumerable<string> words) => string.Concat(words);

    private static Dictionary<string, string> ReadWords()
    {
        using JsonDocument document = ReferenceTable.Parse("column-synonyms");
        Dictionary<string, string> words = new(StringComparer.Ordinal);
        foreach (JsonElement row in document.RootElement.GetProperty("rows").EnumerateArray())
        {
            string column = row.GetProperty("name").GetString()!;
            words[Joined(Words(column))] = column;
            foreach (string synonym in row.GetProperty("words").GetString()!.Split(';'))
            {
                words[Joined(Words(synonym))] = column;
            }
        }

        return words;
    }

    [GeneratedRegex(
        @"(?<![\p{L}\p{Nd}])((?<small>mm)|cm)(2|3|²|³|\^2)?(?![\p{L}\p{Nd}])",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex Unit();

    [GeneratedRegex(
        @"(?<![\p{Nd}])([0-9]{4}-[0-9]{1,2}-[0-9]{1,2}|[0-9]{1,2}([./-])[0-9]{1,2}([./-])([0-9]{4}|[0-9]{2})|[0-9]{1,2}\.? \p{L}{3,9}\.? [0-9]{4}|\p{L}{3,9}\.? [0-9]{1,2},? [0-9]{4})(?![\p{Nd}])",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex Date();
}
