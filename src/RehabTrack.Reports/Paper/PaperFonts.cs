using System.Collections.Concurrent;
using System.Collections.Frozen;
using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;

namespace RehabTrack.Reports.Paper;

/// <summary>
/// The fonts of the paper. They come along with the program, since a server need not have any; each knows which letters it can write. The
/// second is a subset for Greek, Cyrillic, Vietnamese and all of Latin.
/// </summary>
internal sealed class PaperFonts : IFontResolver
{
    private static readonly ConcurrentDictionary<(PaperFace Face, bool IsBold), FrozenDictionary<int, double>> Known = new();

    static PaperFonts() => GlobalFontSettings.FontResolver = new PaperFonts();

    private PaperFonts() { }

    /// <summary>The font of a face in a style.</summary>
    public static XFont Font(PaperFace face, PaperStyle style) => Font(face, style.SizePoints, style.IsBold);

    /// <summary>Width of a letter at a size of one point; null when the face cannot write it.</summary>
    /// <param name="face">The face.</param>
    /// <param name="isBold">Whether it is bold.</param>
    /// <param name="letter">The code point of Unicode.</param>
    public static double? Width(PaperFace face, bool isBold, int letter) =>
        Known.GetOrAdd((face, isBold), static key => Widths(key.Face, key.IsBold)).TryGetValue(letter, out double width) ? width : null;

    /// <inheritdoc />
    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
        Enum.TryParse(familyName, out PaperFace face) ? new FontResolverInfo(FileOf(face, isBold)) : null;

    /// <inheritdoc />
    public byte[]? GetFont(string faceName)
    {
        using Stream file = typeof(PaperFonts).Assembly.GetManifestResourceStream("fonts/" + faceName)!;
        byte[] font = new byte[file.Length];
        file.ReadExactly(font);
        return font;
    }

    private static string FileOf(PaperFace face, bool isBold) =>
        (face == PaperFace.Own ? "atkinson-hyperlegible-next-" : "noto-sans-") + (isBold ? "700.ttf" : "400.ttf");

    private static XFont Font(PaperFace face, double sizePoints, bool isBold) =>
        new(face.ToString(), sizePoints, isBold ? XFontStyleEx.Bold : XFontStyleEx.Regular);

    // The library tells which letters a font has only while it draws: so it draws all of them once, on a page that nobody keeps.
    private static FrozenDictionary<int, double> Widths(PaperFace face, bool isBold)
    {
        const int perEm = 1000;
        XFont font = Font(face, perEm, isBold);
        HashSet<int> letters = [];
        using PdfDocument page = new();
        page.RenderEvents.RenderTextEvent += (_, drawn) =>
            letters.UnionWith(drawn.CodePointGlyphIndexPairs.Where(pair => pair.GlyphIndex != 0).Select(pair => pair.CodePoint));
        using XGraphics drawing = XGraphics.FromPdfPage(page.AddPage());
        string every = string.Concat(
            Enumerable.Range(' ', char.MaxValue - ' ').Select(one => (char)one).Where(one => !char.IsSurrogate(one) && !char.IsControl(one))
        );
        drawing.DrawString(every, font, XBrushes.Black, 0, 0);
        return letters.ToFrozenDictionary(one => one, one => drawing.MeasureString(((char)one).ToString(), font).Width / perEm);
    }
}
