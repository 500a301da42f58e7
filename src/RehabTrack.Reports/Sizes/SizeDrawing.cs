using System.Globalization;
using System.Xml.Linq;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Reports.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Sizes;

/// <summary>
/// The sizes of an injury for its owner: a bar an examination, the largest as the measure of all. A bar that cannot be told from the one
/// before it is drawn in outline. No figure of the computation is shown.
/// </summary>
public static class SizeDrawing
{
    private const double Width = 360;
    private const double Size = 14;
    private const double Tallest = 150;
    private const double Bar = 44;

    /// <summary>Draws the bars.</summary>
    /// <param name="bars">By date, at least one.</param>
    /// <param name="options">How they are drawn.</param>
    public static Picture Draw(IReadOnlyList<SizeBar> bars, SizeOptions options)
    {
        ArgumentNullException.ThrowIfNull(bars);
        ArgumentNullException.ThrowIfNull(options);
        CultureInfo culture = options.Culture;
        const double Top = 8;
        const double Ground = Top + Tallest;
        const double Height = Ground + (2 * Size) + 8;
        string description = string.Format(
            culture,
            Drawings.SizesDescription,
            bars.Count,
            Text(bars[0].Date, culture),
            Text(bars[^1].Date, culture)
        );
        XElement root = Svg.Root(Width, Height, false, Drawings.SizesTitle, description, options.IdPrefix);
        XElement scenery = Svg.Of("g", ("aria-hidden", "true"));
        double room = (Width - 8) / bars.Count;
        double wide = Math.Min(Bar, room * 0.62);
        bool isCrowded = bars.Count > 6;
        for (int i = 0; i < bars.Count; i++)
        {
            double middle = 4 + (room * (i + 0.5));
            // An injury that can no longer be seen keeps a line, so that the examination is not missed.
            double tall = Math.Max(2, Tallest * bars[i].Share);
            scenery.Add(
                Svg.Of(
                    "rect",
                    ("x", middle - (wide / 2)),
                    ("y", Ground - tall),
                    ("width", wide),
                    ("height", tall),
                    ("fill", bars[i].IsWithinError ? Palette.Tint : Palette.Accent),
                    ("stroke", Palette.Accent),
                    ("stroke-width", 1.5),
                    ("stroke-dasharray", bars[i].IsWithinError ? "4 3" : null),
                    ("data-part", bars[i].IsWithinError ? "same" : "told")
                )
            );
            if (!isCrowded || i == 0 || i == bars.Count - 1 || i % 2 == 0)
            {
                scenery.Add(Svg.Text(middle, Ground + Size + 6, Label(bars[i].Date, culture), Size, Palette.Soft, "middle"));
            }
        }

        scenery.Add(Svg.Line(4, Ground, Width - 4, Ground, Palette.Soft, 1));
        root.Add(scenery);
        return new Picture
        {
            Root = root,
            Width = Width,
            Height = Height,
            Title = Drawings.SizesTitle,
            Description = description,
            Table = Table(bars, culture),
        };
    }

    private static DrawingTable Table(IReadOnlyList<SizeBar> bars, CultureInfo culture) =>
        new(
            Drawings.SizesTitle,
            [new(Drawings.ColumnDate, false), new(Drawings.SizesColumnShare, true), new(Drawings.SizesColumnBefore, false)],
            [
                .. bars.Select(
                    (bar, i) =>
                        new[]
                        {
                            Text(bar.Date, culture),
                            (100 * bar.Share).ToString("0", culture),
                            i == 0 ? Drawings.SizesFirst
                            : bar.IsWithinError ? Drawings.SizesSame
                            : bar.Share < bars[i - 1].Share ? Drawings.SizesSmaller
                            : Drawings.SizesLarger,
                        }
                ),
            ]
        );

    private static string Text(DateOnly date, CultureInfo culture) => Figures.Date(date, null, culture);

    private static string Label(DateOnly date, CultureInfo culture) => date.ToString("d MMM", culture);
}
