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
        int same = 0;
        while (same < text.Length && !IsLeftOut(text[same]) && char.ToLowerInvariant(text[same]) == text[same])
        {
            same++;
        }

        if (same == text.Length)
        {
            return text;
        }

        StringBuilder folded = new(text, 0, same, text.Length);
        foreach (char letter in text.AsSpan(same))
        {
            if (!IsLeftOut(letter))
            {
                folded.Append(char.ToLowerInvariant(letter));
            }
        }

        return folded.ToString();
    }

    private static bool IsLeftOut(char letter) => char.IsWhiteSpace(letter) || letter is '-' or '_' or '\u2010' or '\u2011';
}
