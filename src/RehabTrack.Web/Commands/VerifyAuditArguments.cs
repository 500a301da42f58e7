using System.Globalization;
using RehabTrack.Records.History;
using RehabTrack.Wording;

namespace RehabTrack.Web.Commands;

/// <summary>The words behind <c>verify-audit</c> on the command line.</summary>
/// <param name="Folder">The data folder.</param>
/// <param name="From">A file with notes of an earlier check; null to check whole trails.</param>
/// <param name="Expected">A noted line that must still be there; null for none.</param>
public sealed record VerifyAuditArguments(string Folder, string? From, TrailNote? Expected)
{
    /// <summary>Reads the words.</summary>
    /// <param name="words">What follows <c>verify-audit</c>.</param>
    /// <param name="message">Why they cannot be followed; empty when they can.</param>
    /// <returns>The arguments; null with a message.</returns>
    public static VerifyAuditArguments? Parse(IReadOnlyList<string> words, out string message)
    {
        ArgumentNullException.ThrowIfNull(words);
        Dictionary<string, string> options = new(StringComparer.Ordinal);
        for (int index = 0; index < words.Count; index++)
        {
            string word = words[index];
            if (word is not ("--data" or "--from" or "--expect"))
            {
                return Refused(VerifyAuditTexts.UnknownWord, word, out message);
            }

            if (index + 1 == words.Count || !options.TryAdd(word, words[++index]))
            {
                return Refused(VerifyAuditTexts.OptionOnce, word, out message);
            }
        }

        if (!options.TryGetValue("--data", out string? folder) || string.IsNullOrWhiteSpace(folder))
        {
            return Refused(VerifyAuditTexts.Usage, "", out message);
        }

        TrailNote? expected = null;
        if (options.TryGetValue("--expect", out string? note))
        {
            expected = TrailNote.Parse(note);
            if (expected is null)
            {
                return Refused(VerifyAuditTexts.NoteUnreadable, note, out message);
            }
        }

        message = "";
        return new VerifyAuditArguments(folder, options.GetValueOrDefault("--from"), expected);
    }

    private static VerifyAuditArguments? Refused(string text, string word, out string message)
    {
        message = string.Format(CultureInfo.InvariantCulture, text, word);
        return null;
    }
}
