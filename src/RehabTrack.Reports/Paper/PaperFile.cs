using System.Globalization;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Paper;

/// <summary>
/// A sheet as a PDF file of A4 pages. Its letters are text that can be found and copied, in the order in which they are read; what they are set
/// in comes along in the file.
/// </summary>
public static class PaperFile
{
    /// <summary>The media type of such a file.</summary>
    public const string MediaType = "application/pdf";

    private static readonly PaperStyle Foot = new(8, 11, false, PaperColour.Soft);

    /// <summary>Writes the file.</summary>
    /// <param name="sheet">What stands on it.</param>
    /// <param name="culture">The language of what the paper itself says; null takes the usual.</param>
    public static byte[] Write(PaperSheet sheet, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        CultureInfo wanted = culture ?? TextCulture.Default;
        PaperLetters letters = new();
        List<PaperPart> parts = [.. sheet.Blocks.Select(block => PaperPart.Of(block, letters))];
        if (letters.HasUnwritable)
        {
            string said = string.Format(wanted, PaperTexts.Unwritable, char.ConvertFromUtf32(PaperLetters.Unwritable));
            parts.Add(PaperPart.Of(new PaperText(said, PaperTone.Soft), letters));
        }

        PaperFlow flow = new();
        flow.Put(parts);
        using PdfDocument document = new();
        document.Info.Title = sheet.Title;
        document.Info.Author = sheet.Author;
        document.Language = wanted.Name;
        document.ViewerPreferences.DisplayDocTitle = true;
        foreach ((int index, PaperPage page) in flow.Pages.Index())
        {
            string number = string.Format(wanted, PaperTexts.PageOf, index + 1, flow.Pages.Count);
            Draw(document, page, sheet.Foot, number, letters);
        }

        using MemoryStream file = new();
        document.Save(file, closeStream: false);
        return file.ToArray();
    }

    private static void Draw(PdfDocument document, PaperPage page, string foot, string number, PaperLetters letters)
    {
        PdfPage leaf = document.AddPage();
        leaf.Width = XUnit.FromPoint(PaperFlow.PageWidth);
        leaf.Height = XUnit.FromPoint(PaperFlow.PageHeight);
        using XGraphics drawing = XGraphics.FromPdfPage(leaf);
        foreach (PaperRule rule in page.Rules)
        {
            drawing.DrawRectangle(Brush(rule.Colour), rule.Left, rule.Top, rule.Width, rule.Height);
        }

        foreach (PaperWords words in page.Words)
        {
            Draw(drawing, words);
        }

        double top = PaperFlow.Bottom + (2 * Foot.LinePoints);
        double right = PaperFlow.PageWidth - PaperFlow.Side;
        double left = right - PaperLetters.Width(number, Foot);
        string line = letters.Line(foot, Foot, left - PaperFlow.Side - Foot.LinePoints);
        Draw(drawing, new PaperWords(line, PaperFlow.Side, top, Foot));
        Draw(drawing, new PaperWords(number, left, top, Foot));
    }

    private static void Draw(XGraphics drawing, PaperWords words)
    {
        double left = words.Left;
        foreach ((PaperFace face, string text) in PaperLetters.Pieces(words.Text, words.Style.IsBold))
        {
            drawing.DrawString(text, PaperFonts.Font(face, words.Style), Brush(words.Style.Colour), left, words.Baseline);
            left += PaperLetters.Width(text, words.Style);
        }
    }

    private static XSolidBrush Brush(PaperColour colour) => new(XColor.FromArgb(colour.Red, colour.Green, colour.Blue));
}
