using System.Xml.Linq;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Reports.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Ladder;

/// <summary>The legend names only the marks that occur, and its first bar is the scale.</summary>
internal static class LadderLegend
{
    public static (XElement Legend, double Height) Of(LadderLayout layout, IReadOnlyList<LadderItem> items, string hatch, string? axis)
    {
        XElement legend = Svg.Of("g", ("class", "legend"), ("aria-hidden", "true"));
        double size = layout.SmallSize;
        double height = Math.Min(layout.RungHeight, 12);
        double x = 4;
        double y = layout.Bottom + size + 4;
        if (items.Count > 0 && axis is not null)
        {
            foreach (string line in Svg.Wrapped(axis, layout.Width - 8, size))
            {
                legend.Add(Svg.Text(x, y, line, size, Palette.Soft));
                y += size + 4;
            }

            y += 4;
        }

        foreach ((double width, string text, Func<double, double, IEnumerable<XElement>> mark) in Entries(layout, items, height, hatch))
        {
            double whole = width + 6 + Svg.WidthOf(text, size);
            if (x > 4 && x + whole > layout.Width)
            {
                x = 4;
                y += size + 8;
            }

            foreach (XElement part in mark(x + (width / 2), y - (size * 0.35)))
            {
                legend.Add(part);
            }

            legend.Add(Svg.Text(x + width + 6, y, text, size, Palette.Soft));
            x += whole + 18;
        }

        return (legend, legend.HasElements ? y + 8 : layout.Bottom + 8);
    }

    private static IEnumerable<(double Width, string Text, Func<double, double, IEnumerable<XElement>> Mark)> Entries(
        LadderLayout layout,
        IReadOnlyList<LadderItem> items,
        double height,
        string hatch
    )
    {
        double unit = layout.PixelsPerCm2;
        if (items.Any(item => item.Mark is LadderMark.Bar or LadderMark.LesionBar))
        {
            yield return (
                unit,
                Drawings.LegendLigament,
                (x, y) => [LadderMarks.Ligament(x, y - (height / 2), unit / 2, height, Palette.Limb, false).With(("class", "scale"))]
            );
        }

        if (items.Any(item => item.Share > 0))
        {
            yield return (
                12,
                Drawings.LegendLesion,
                (x, y) => [LadderMarks.Lesion(x, y - (height / 2), 6, height).With(("class", "sample"))]
            );
        }

        if (items.Any(item => item.Label is not null && item.Step?.Place.LesionArea.Kind == LesionAreaKind.Diffuse))
        {
            yield return (
                22,
                Drawings.LegendDiffuse,
                (x, y) => [LadderMarks.Ligament(x, y - (height / 2), 11, height, $"url(#{hatch})", false).With(("class", "sample"))]
            );
        }

        if (items.Any(item => string.Equals(item.Label, Drawings.LesionUnknownMark, StringComparison.Ordinal)))
        {
            yield return (
                22,
                Drawings.LegendLesionUnknown,
                (x, y) => [LadderMarks.Ligament(x, y - (height / 2), 11, height, Palette.Limb, true).With(("class", "sample"))]
            );
        }

        if (items.Any(item => item.Mark == LadderMark.ShareDisc))
        {
            yield return (14, Drawings.LegendShareOnly, (x, y) => LadderMarks.Disc(x, y, 6, 0.25, Palette.Limb));
        }

        if (items.Any(item => item.Mark == LadderMark.Calliper))
        {
            yield return (12, Drawings.LegendThicknessOnly, (x, y) => [LadderMarks.Calliper(x, y, 6)]);
        }

        if (items.Any(item => item.Mark == LadderMark.Grades))
        {
            yield return (12, Drawings.LegendGradesOnly, (x, y) => [LadderMarks.Diamond(x, y, 6, Palette.Sheet, Palette.Ink, 1.4)]);
        }

        if (items.Any(item => item.Mark == LadderMark.Nothing))
        {
            yield return (
                8,
                Drawings.LegendNothing,
                (x, y) =>
                    [
                        Svg.Of(
                            "circle",
                            ("cx", x),
                            ("cy", y),
                            ("r", 3),
                            ("fill", Palette.Sheet),
                            ("stroke", Palette.Soft),
                            ("stroke-width", 1.4)
                        ),
                    ]
            );
        }

        if (items.Any(item => item.Step is { Uncertain: true }))
        {
            yield return (36, Drawings.LegendUnsure, (x, y) => [Sample(x, y, true), .. LadderMarks.UnsureSign(x, y, 7)]);
        }

        if (items.Any(item => item.Step is { Basis: LinkBasis.Pinned, Uncertain: false }))
        {
            yield return (30, Drawings.LegendPinned, (x, y) => [Sample(x, y, false), LadderMarks.PinnedSign(x, y)]);
        }

        if (items.Any(item => item.Mark == LadderMark.NotRead))
        {
            yield return (
                22,
                Drawings.LegendNotRead,
                (x, y) => [LadderMarks.NotReadBox(x, y, 11, height - 2, Palette.Soft).With(("class", "sample"))]
            );
        }
    }

    private static XElement Sample(double x, double y, bool unsure) =>
        Svg.Line(x - 16, y, x + 16, y, Palette.Accent, unsure ? 1.5 : 3, unsure ? "5 4" : null);
}
