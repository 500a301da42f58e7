using System.Globalization;
using RehabTrack.Wording;

namespace RehabTrack.Web.Commands;

/// <summary>The words behind a command that takes options only, each with one value.</summary>
internal static class OptionWords
{
    /// <summary>Reads them.</summary>
    /// <param name="words">What follows the command.</param>
    /// <param name="known">The options it takes.</param>
    /// <param name="usage">How it is used.</param>
    /// <param name="message">Why they cannot be followed; empty when they can.</param>
    /// <returns>The values by option; null with a message.</returns>
    public static Dictionary<string, string>? Read(
        IReadOnlyList<string> words,
        IReadOnlyCollection<string> known,
        string usage,
        out string message
    )
    {
        Dictionary<string, string> options = new(StringComparer.Ordinal);
        message = "";
        for (int index = 0; index < words.Count && message.Length == 0; index++)
        {
            string word = words[index];
            if (!known.Contains(word, StringComparer.Ordinal))
            {
                message = string.Format(CultureInfo.InvariantCulture, BackupTexts.UnknownWord, word, usage);
            }
            else if (index + 1 == words.Count || string.IsNullOrWhiteSpace(words[index + 1]) || !options.TryAdd(word, words[++index]))
            {
                message = string.Format(CultureInfo.InvariantCulture, BackupTexts.OptionOnce, word, usage);
            }
        }

        return message.Length == 0 ? options : null;
    }
}
