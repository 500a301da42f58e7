using System.Globalization;
using System.Text;

namespace RehabTrack.Reports.Paper;

/// <summary>Words as the paper can write them, broken into lines.</summary>
internal sealed class PaperLetters
{
    /// <summary>What stands for a letter that no font of the paper has: the replacement character of Unicode.</summary>
    public const int Unwritable = 0xFFFD;

    /// <summary>Whether a letter was met that the paper cannot write.</summary>
    public bool HasUnwritable { get; private set; }

    /// <summary>Width of a text in points.</summary>
    public static double Width(string text, PaperStyle style) => text.EnumerateRunes().Sum(letter => Width(letter, style));

    /// <summary>The text in pieces, each of which one face can write.</summary>
    public static IEnumerable<(PaperFace Face, string Text)> Pieces(string text, bool isBold)
    {
        StringBuilder piece = new();
        PaperFace face = PaperFace.Own;
        foreach (Rune letter in text.EnumerateRunes())
        {
            PaperFace next = FaceOf(letter.Value, isBold) ?? face;
            if (next != face && piece.Length > 0)
            {
                yield return (face, piece.ToString());
                piece.Clear();
            }

            face = next;
            piece.Append(letter.ToString());
        }

        if (piece.Length > 0)
        {
            yield return (face, piece.ToString());
        }
    }

    /// <summary>The lines of a text in a width; a word that is wider is broken between its letters.</summary>
    /// <param name="text">The text, with its own ends of lines.</param>
    /// <param name="style">How it stands.</param>
    /// <param name="width">The room, in points.</param>
    public IReadOnlyList<string> Lines(string text, PaperStyle style, double width)
    {
        List<string> lines = [];
        foreach (string paragraph in Writable(text, style.IsBold).Split('\n'))
        {
            string line = "";
            foreach (string word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                string longer = line.Length == 0 ? word : $"{line} {word}";
                if (Width(longer, style) <= width)
                {
                    line = longer;
                    continue;
                }

                if (line.Length > 0)
                {
                    lines.Add(line);
                }

                line = Broken(word, style, width, lines);
            }

            lines.Add(line);
        }

        return lines;
    }

    /// <summary>Widest line of a text if it need not break, and its widest word, in points.</summary>
    public (double Line, double Word) Widest(string text, PaperStyle style)
    {
        string[] lines = Writable(text, style.IsBold).Split('\n');
        return (lines.Max(line => Width(line, style)), lines.SelectMany(line => line.Split(' ')).Max(word => Width(word, style)));
    }

    /// <summary>One line, cut short where it is wider than its room.</summary>
    public string Line(string text, PaperStyle style, double width)
    {
        string line = Writable(text, style.IsBold).Replace('\n', ' ');
        if (Width(line, style) <= width)
        {
            return line;
        }

        const string more = "…";
        List<string> kept = [];
        string first = Broken(line, style, width - Width(more, style), kept);
        return (kept.Count > 0 ? kept[0] : first).TrimEnd() + more;
    }

    /// <summary>What is left of a word after the lines that it fills.</summary>
    private static string Broken(string word, PaperStyle style, double width, List<string> lines)
    {
        StringBuilder line = new();
        double used = 0;
        TextElementEnumerator elements = StringInfo.GetTextElementEnumerator(word);
        while (elements.MoveNext())
        {
            string element = elements.GetTextElement();
            double more = Width(element, style);
            if (line.Length > 0 && used + more > width)
            {
                lines.Add(line.ToString());
                line.Clear();
                used = 0;
            }

            line.Append(element);
            used += more;
        }

        return line.ToString();
    }

    private static double Width(Rune letter, PaperStyle style) =>
        FaceOf(letter.Value, style.IsBold) is { } face
            ? PaperFonts.Width(face, style.IsBold, letter.Value)!.Value * style.SizePoints
            : throw new ArgumentException("Letters are made writable before they are measured.", nameof(letter));

    private static PaperFace? FaceOf(int letter, bool isBold) =>
        PaperFonts.Width(PaperFace.Own, isBold, letter) is not null ? PaperFace.Own
        : PaperFonts.Width(PaperFace.OtherScripts, isBold, letter) is not null ? PaperFace.OtherScripts
        : null;

    // Accents are put together with their letters where there is one for both. Marks that have no shape of their own steer what a screen does
    // with the text, which paper does not; everything else that cannot be written leaves its place to be seen.
    private string Writable(string text, bool isBold)
    {
        StringBuilder written = new(text.Length);
        foreach (Rune letter in Composed(text.ReplaceLineEndings("\n")).EnumerateRunes())
        {
            if (letter.Value == '\n')
            {
                written.Append('\n');
            }
            else if (Rune.IsWhiteSpace(letter))
            {
                written.Append(' ');
            }
            else if (Rune.GetUnicodeCategory(letter) == UnicodeCategory.Format)
            {
                continue;
            }
            else if (letter.Value != Unwritable && FaceOf(letter.Value, isBold) is not null)
            {
                written.Append(letter.ToString());
            }
            else
            {
                HasUnwritable = true;
                written.Append((char)Unwritable);
            }
        }

        return written.ToString();
    }

    // Half a pair of surrogates cannot be composed; each such half is taken for a letter that cannot be written.
    private static string Composed(string text) => string.Concat(text.EnumerateRunes()).Normalize(NormalizationForm.FormC);
}
