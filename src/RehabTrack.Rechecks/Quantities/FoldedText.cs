using System.Text;

namespace RehabTrack.Rechecks.Quantities;

/// <summary>The form in which headings, codes and names are compared.</summary>
public static class FoldedText
{
    /// <summary>The text in lower case without spaces, hyphens and underscores; empty for an empty text.</summary>
    /// <param name="text">The text.</param>
    public static string Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        StringBuilder folded = new(text.Length);
        foreach (char letter in text)
        {
            if (!char.IsWhiteSpace(letter) && letter is not ('-' or '_' or '\u2010' or '\u2011'))
            {
                folded.Append(char.ToLowerInvariant(letter));
            }
        }

        return folded.ToString();
    }
}
