using System.Globalization;
using System.Text;

namespace RehabTrack.Records.Keeping;

/// <summary>Text without case, accents and doubled spaces: what is searched and ordered, since the database folds only ASCII.</summary>
internal static class Folded
{
    public static string Of(string text)
    {
        StringBuilder folded = new(text.Length);
        bool space = false;
        // Half a surrogate pair cannot be taken apart; it is refused where it is kept, and must not break a search before.
        string whole = Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(text));
        foreach (char letter in whole.Normalize(NormalizationForm.FormD))
        {
            if (char.IsWhiteSpace(letter))
            {
                space = folded.Length > 0;
                continue;
            }

            if (CharUnicodeInfo.GetUnicodeCategory(letter) == UnicodeCategory.NonSpacingMark)
            {
                continue;
            }

            if (space)
            {
                folded.Append(' ');
                space = false;
            }

            folded.Append(Plain(char.ToLowerInvariant(letter)));
        }

        return folded.ToString();
    }

    /// <summary>Letters that no decomposition takes apart.</summary>
    private static string Plain(char letter) =>
        letter switch
        {
            'ß' => "ss",
            'æ' => "ae",
            'œ' => "oe",
            'ø' => "o",
            'đ' or 'ð' => "d",
            'ł' => "l",
            'þ' => "th",
            'ı' => "i",
            '’' => "'",
            _ => letter.ToString(),
        };
}
