using System.Globalization;
using RehabTrack.Wording;

namespace RehabTrack.Web.Commands;

/// <summary>The words behind <c>analyse</c> on the command line.</summary>
/// <param name="Input">The sheet.</param>
/// <param name="Output">Where the JSON goes.</param>
/// <param name="Settings">A settings file; null takes the defaults.</param>
/// <param name="AsOf">The date it speaks for; null takes the latest of the file.</param>
public sealed record AnalyseArguments(string Input, string Output, string? Settings, DateOnly? AsOf)
{
    /// <summary>Reads the words.</summary>
    /// <param name="words">What follows <c>analyse</c>.</param>
    /// <param name="message">Why they cannot be followed; empty when they can.</param>
    /// <returns>The arguments; null with a message.</returns>
    public static AnalyseArguments? Parse(IReadOnlyList<string> words, out string message)
    {
        ArgumentNullException.ThrowIfNull(words);
        string? input = null;
        Dictionary<string, string> options = new(StringComparer.Ordinal);
        for (int index = 0; index < words.Count; index++)
        {
            string word = words[index];
            if (word is "--out" or "--settings" or "--as-of")
            {
                if (index + 1 == words.Count || !options.TryAdd(word, words[++index]))
                {
                    return Refused(AnalyseTexts.OptionOnce, word, out message);
                }
            }
            else if (word.StartsWith('-') || input is not null)
            {
                return Refused(AnalyseTexts.UnknownWord, word, out message);
            }
            else
            {
                input = word;
            }
        }

        if (input is null || !options.TryGetValue("--out", out string? output) || string.IsNullOrWhiteSpace(output))
        {
            return Refused(AnalyseTexts.Usage, "", out message);
        }

        DateOnly? asOf = null;
        if (options.TryGetValue("--as-of", out string? date))
        {
            if (!DateOnly.TryParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly read))
            {
                return Refused(AnalyseTexts.AsOfNotADate, date, out message);
            }

            asOf = read;
        }

        message = "";
        return new AnalyseArguments(input, output, options.GetValueOrDefault("--settings"), asOf);
    }

    private static AnalyseArguments? Refused(string text, string word, out string message)
    {
        message = string.Format(CultureInfo.InvariantCulture, text, word);
        return null;
    }
}
