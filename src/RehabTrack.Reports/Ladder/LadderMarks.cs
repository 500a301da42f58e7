using System.Xml.Linq;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Reports.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Ladder;

/// <summary>The marks of a ladder, each drawn in one place only: in the picture and in its legend.</summary>
internal static class LadderMarks
{
    public static XElement HatchPattern(string id) =>
        Svg.Of("pattern", ("id", id), ("width", 5), ("height", 5), ("patternUnits", "userSpaceOnUse"), ("patternTransform", "rotate(45)"))
            .Containing(Svg.Of("rect", ("width", 5), ("height", 5), ("fill", Palette.Limb)), Svg.Line(1, 0, 1, 5, Palette.Ink, 1.6));

    public static IEnumerable<XElement> Of(LadderItem item, double height, string hatch)
    {
        bool diffuse = item.Step?.Place.LesionArea.Kind == LesionAreaKind.Diffuse;
        double top = item.Y - (height / 2);
        switch (item.Mark)
        {
            case LadderMark.Bar:
                yield return Ligament(
                    item.X,
                    top,
                    item.HalfWidth,
                    height,
                    diffuse ? $"url(#{hatch})" : Palette.Limb,
                    !diffuse && item.Share is null
                );
                if (item.Share > 0 && !diffuse)
                {
                    yield return Lesion(item.X, top, item.HalfWidth * item.Share.Value, height);
                }

                break;
            case LadderMark.LesionBar:
                yield return Lesion(item.X, top, item.HalfWidth, height);
                break;
            case LadderMark.ShareDisc:
                foreach (
                    XElement part in Disc(
                        item.X,
                        item.Y,
                        item.HalfWidth,
                        diffuse ? null : item.Share,
                        diffuse ? $"url(#{hatch})" : Palette.Limb
                    )
                )
                {
                    yield return part;
                }

                break;
            case LadderMark.Calliper:
                yield return Calliper(item.X, item.Y, item.HalfWidth);
                break;
            case LadderMark.Grades:
                yield return Diamond(item.X, item.Y, item.HalfWidth - 1, Palette.Sheet, Palette.Ink, 1.4);
                break;
            case LadderMark.Nothing:
                yield return Svg.Of(
                    "circle",
                    ("cx", item.X),
                    ("cy", item.Y),
                    ("r", item.HalfWidth - 1),
                    ("fill", Palette.Sheet),
                    ("stroke", Palette.Soft),
                    ("stroke-width", 1.4)
                );
                break;
            case LadderMark.NotRead:
                yield return NotReadBox(item.X, item.Y, item.HalfWidth, height, Palette.Soft);
                break;
        }
    }

    public static XElement Ligament(double x, double top, double half, double height, string fill, bool open) =>
        Svg.Of(
            "rect",
            ("class", "ligament"),
            ("x", x - half),
            ("y", top),
            ("width", 2 * half),
            ("height", height),
            ("rx", 2),
            ("fill", fill),
            ("stroke", Palette.Soft),
            ("stroke-width", open ? 1.1 : 0.7),
            ("stroke-dasharray", open ? "3 2.5" : null)
        );

    public static XElement Lesion(double x, double top, double half, double height) =>
        Svg.Of("rect", ("class", "lesion"), ("x", x - half), ("y", top), ("width", 2 * half), ("height", height), ("fill", Palette.Ink));

    public static IEnumerable<XElement> Disc(double x, double y, double radius, double? share, string fill)
    {
        yield return Svg.Of(
            "circle",
            ("class", "disc"),
            ("cx", x),
            ("cy", y),
            ("r", radius),
            ("fill", fill),
            ("stroke", Palette.Soft),
            ("stroke-width", 0.9)
        );
        if (share >= 1)
        {
            yield return Svg.Of("circle", ("class", "disc-share"), ("cx", x), ("cy", y), ("r", radius), ("fill", Palette.Ink));
        }
        else if (share > 0)
        {
            double angle = 2 * Math.PI * share.Value;
            string path =
                $"M{N(x)} {N(y)}V{N(y - radius)}A{N(radius)} {N(radius)} 0 {(share > 0.5 ? 1 : 0)} 1 "
                + $"{N(x + (radius * Math.Sin(angle)))} {N(y - (radius * Math.Cos(angle)))}Z";
            yield return Svg.Of("path", ("class", "disc-share"), ("d", path), ("fill", Palette.Ink));
        }
    }

    public static XElement Calliper(double x, double y, double half) =>
        Svg.Of(
            "path",
            ("class", "calliper"),
            ("d", $"M{N(x - 5)} {N(y - half)}H{N(x + 5)}M{N(x)} {N(y - half)}V{N(y + half)}M{N(x - 5)} {N(y + half)}H{N(x + 5)}"),
            ("fill", "none"),
            ("stroke", Palette.Ink),
            ("stroke-width", 1.6)
        );

    public static XElement Diamond(double x, double y, double half, string fill, string stroke, double weight) =>
        Svg.Of(
            "path",
            ("d", $"M{N(x)} {N(y - half)}L{N(x + half)} {N(y)}L{N(x)} {N(y + half)}L{N(x - half)} {N(y)}Z"),
            ("fill", fill),
            ("stroke", stroke),
            ("stroke-width", weight)
        );

    public static XElement NotReadBox(double x, double y, double half, double height, string colour) =>
        Svg.Of(
            "rect",
            ("class", "not-read"),
            ("x", x - half),
            ("y", y - (height / 2) - 1),
            ("width", 2 * half),
            ("height", height + 2),
            ("rx", 2),
            ("fill", Palette.Sheet),
            ("stroke", colour),
            ("stroke-width", 1.1),
            ("stroke-dasharray", "3 3")
        );

    public static XElement HitArea(LadderItem item, LadderLayout layout)
    {
        double above = layout.RungHeight / 2 + (item.LabelBeside || item.Label is null ? 2 : layout.FigureSize + 3);
        double below = (layout.RungHeight / 2) + 3;
        double half = Math.Max(item.HalfWidth + 3, Math.Min(22, layout.Spacing / 2 - 2));
        return Svg.Of(
            "rect",
            ("class", "hit"),
            ("x", item.X - half),
            ("y", item.Y - above),
            ("width", 2 * half),
            ("height", above + below),
            ("fill", "none"),
            ("pointer-events", "all")
        );
    }

    public static XElement Ring(LadderItem item, LadderLayout layout, bool chosen)
    {
        double pad = Math.Clamp((item.Room - layout.RungHeight) / 2, 1, 3);
        return Svg.Of(
            "rect",
            ("class", "ring"),
            ("x", item.X - item.HalfWidth - 3.5),
            ("y", item.Y - (layout.RungHeight / 2) - pad),
            ("width", (2 * item.HalfWidth) + 7),
            ("height", layout.RungHeight + (2 * pad)),
            ("rx", 4),
            ("fill", "none"),
            ("stroke", chosen ? Palette.Accent : "none"),
            ("stroke-width", 2.2)
        );
    }

    public static XElement Between(
        LadderItem above,
        LadderItem below,
        double halfAbove,
        double halfBelow,
        string fill,
        double opacity,
        string kind
    ) =>
        Svg.Of(
            "path",
            ("class", kind),
            (
                "d",
                $"M{N(above.X - halfAbove)} {N(above.Y)}H{N(above.X + halfAbove)}L{N(below.X + halfBelow)} {N(below.Y)}H{N(below.X - halfBelow)}Z"
            ),
            ("fill", fill),
            ("fill-opacity", opacity)
        );

    /// <summary>The lines of one link. Where one end lies outside the window, a short stub tells that the track goes on.</summary>
    public static IEnumerable<XElement> Link(LadderLink link, LadderLayout layout, Func<LadderItem, bool> isShown)
    {
        string kind = KindOf(link.Step);
        for (int i = 1; i < link.Through.Count; i++)
        {
            (LadderItem from, LadderItem to) = (link.Through[i - 1], link.Through[i]);
            string? path =
                isShown(from) && isShown(to) ? Curve(from.Right + 4, from.Y, to.Left - 4, to.Y)
                : isShown(to) ? $"M{N(Math.Max(to.Left - 20, layout.Left - 6))} {N(to.Y)}H{N(to.Left - 4)}"
                : isShown(from) ? $"M{N(from.Right + 4)} {N(from.Y)}H{N(Math.Min(from.Right + 20, layout.Width))}"
                : null;
            if (path is null)
            {
                continue;
            }

            yield return Line(link, path, kind);
            if (i == link.Through.Count - 1 && isShown(from) && isShown(to))
            {
                foreach (XElement sign in Sign(link.Step, (from.Right + to.Left) / 2, (from.Y + to.Y) / 2, layout.Phone ? 8.5 : 7))
                {
                    yield return sign;
                }
            }
        }
    }

    public static IEnumerable<XElement> Sign(TrackStep step, double x, double y, double half) =>
        step.Uncertain ? UnsureSign(x, y, half)
        : step.Basis == LinkBasis.Pinned ? [PinnedSign(x, y)]
        : [];

    public static IEnumerable<XElement> UnsureSign(double x, double y, double half)
    {
        yield return Diamond(x, y, half, Palette.Sheet, Palette.Amber, 1.3).With(("class", "unsure"));
        yield return Svg.Text(x, y + (half * 0.52), Drawings.LesionUnknownMark, half * 1.45, Palette.Amber, "middle", 700);
    }

    public static XElement PinnedSign(double x, double y) =>
        Svg.Of(
            "circle",
            ("class", "pinned"),
            ("cx", x),
            ("cy", y),
            ("r", 3.6),
            ("fill", Palette.Accent),
            ("stroke", Palette.Sheet),
            ("stroke-width", 1.5)
        );

    /// <summary>Shortened to the room there is, with an ellipsis.</summary>
    public static string Fit(string text, double room, double size)
    {
        if (Svg.WidthOf(text, size) <= room)
        {
            return text;
        }

        int length = text.Length;
        while (length > 1 && Svg.WidthOf(text[..length] + "…", size) > room)
        {
            length--;
        }

        return text[..length] + "…";
    }

    private static XElement Line(LadderLink link, string path, string kind)
    {
        double probability = link.Step.LinkProbability ?? 1;
        double weight = link.Step.Uncertain ? 1.5 : 1.4 + (1.6 * Math.Clamp((probability - 0.9) / 0.1, 0, 1));
        return Svg.Of(
            "path",
            ("class", kind),
            ("d", path),
            ("fill", "none"),
            ("stroke", Palette.Accent),
            ("stroke-width", weight + (link.Chosen ? 1.4 : 0)),
            ("stroke-dasharray", link.Step.Uncertain ? "5 4" : null),
            ("stroke-linecap", "round"),
            (
                "stroke-opacity",
                link.Dimmed ? 0.35
                : link.Chosen ? null
                : 0.8
            ),
            ("data-link", link.Step.ExaminationId)
        );
    }

    private static string KindOf(TrackStep step) =>
        step.Uncertain ? "link link-unsure"
        : step.Basis == LinkBasis.Pinned ? "link link-pinned"
        : "link link-sure";

    private static string Curve(double x1, double y1, double x2, double y2)
    {
        double middle = (x1 + x2) / 2;
        return $"M{N(x1)} {N(y1)}C{N(middle)} {N(y1)} {N(middle)} {N(y2)} {N(x2)} {N(y2)}";
    }

    private static string N(double value) => Svg.Written(value);
}
