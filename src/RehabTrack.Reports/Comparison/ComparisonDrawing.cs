using System.Globalization;
using System.Xml.Linq;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Reports.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Comparison;

/// <summary>
/// One place at two dates: a pair of bars for every size that both have, areas on one scale, lengths on another. Behind the second bar lies
/// the zone that measurement error alone could make of the first size. A bar that ends inside it cannot tell, and the words say so.
/// </summary>
public sealed class ComparisonDrawing
{
    private const double BarHeight = 13;
    private readonly TrackStep _before;
    private readonly TrackStep _now;
    private readonly IReadOnlyList<SizeChange> _changes;
    private readonly ComparisonOptions _options;
    private readonly double _width;
    private readonly double _size;
    private readonly double _left;

    private ComparisonDrawing(TrackStep before, TrackStep now, IReadOnlyList<SizeChange> changes, ComparisonOptions options)
    {
        _before = before;
        _now = now;
        _changes = changes;
        _options = options;
        _width = options.Width == WidthClass.Phone ? 380 : 460;
        _size = options.Width == WidthClass.Phone ? 14 : 13;
        _left = Math.Max(Svg.WidthOf(DateOf(before), _size), Svg.WidthOf(DateOf(now), _size)) + 14;
    }

    /// <summary>Draws a comparison.</summary>
    /// <param name="before">The place at the earlier date.</param>
    /// <param name="now">The same place at the later date.</param>
    /// <param name="changes">The sizes that both dates have, compared.</param>
    /// <param name="options">How it is drawn.</param>
    public static Picture Draw(TrackStep before, TrackStep now, IReadOnlyList<SizeChange> changes, ComparisonOptions options)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(now);
        ArgumentNullException.ThrowIfNull(changes);
        ArgumentNullException.ThrowIfNull(options);
        return new ComparisonDrawing(before, now, changes, options).Draw();
    }

    private double PlotRight => _width - Svg.WidthOf(Value(MeasuredSize.LigamentArea, 10), _size) - 12;

    private CultureInfo Culture => _options.Culture;

    private Picture Draw()
    {
        string title = Say(
            Drawings.ComparisonTitle,
            Figures.Level(_now.Place.Level, null, Culture),
            Names.Of(_now.Place.Part, Culture),
            Figures.Date(_before.Date, null, Culture),
            Figures.Date(_now.Date, null, Culture)
        );
        string description =
            _changes.Count == 0
                ? Drawings.ComparisonNothing
                : Drawings.ComparisonDescription
                    + " "
                    + string.Join(" ", _changes.Select(change => Name(change) + ": " + Words(change) + "."));
        XElement rows = Svg.Of("g", ("aria-hidden", "true"));
        double y = 4;
        foreach (SizeChange change in _changes)
        {
            y = Row(rows, change, y);
        }

        if (_changes.Count == 0)
        {
            rows.Add(Svg.Text(4, y + _size + 6, Drawings.ComparisonNothing, _size, Palette.Soft));
            y += _size + 16;
        }
        else
        {
            rows.Add(Zone(4, y + 6, 26, 12), Svg.Text(38, y + 16, Drawings.ComparisonLegend, _size, Palette.Soft));
            y += 26;
        }

        XElement root = Svg.Root(_width, y, false, title, description, _options.IdPrefix);
        root.Add(rows);
        return new Picture
        {
            Root = root,
            Width = _width,
            Height = y,
            Title = title,
            Description = description,
            Table = TableOf(),
        };
    }

    private double Row(XElement rows, SizeChange change, double top)
    {
        double perUnit = PerUnit(change.Size);
        double middle = top + _size + 14;
        double second = middle + BarHeight + 5;
        (double before, double now) = (change.Before * perUnit, change.Now * perUnit);
        double from = _left + (change.DetectableBelow * perUnit);
        double to = Math.Min(_left + (change.DetectableAbove * perUnit), PlotRight);
        XElement row = Svg.Of("g", ("class", change.IsDetectable ? "size told" : "size untold"), ("data-size", change.Size.ToString()));
        row.Add(
            Svg.Text(4, top + _size + 2, Name(change), _size, Palette.Ink, "start", 600),
            Svg.Text(
                _width - 4,
                top + _size + 2,
                Words(change),
                _size,
                change.IsDetectable ? Palette.Ink : Palette.Soft,
                "end",
                change.IsDetectable ? 700 : 400,
                "words"
            ),
            Zone(from, second - 3, Math.Max(to - from, 1), BarHeight + 6),
            Svg.Text(4, middle + (BarHeight * 0.8), DateOf(_before), _size, Palette.Soft),
            Bar(change.Size, middle, before).With(("class", "before")),
            Svg.Text(_width - 4, middle + (BarHeight * 0.8), Value(change.Size, change.Before), _size, Palette.Ink, "end"),
            Svg.Text(4, second + (BarHeight * 0.8), DateOf(_now), _size, Palette.Soft),
            Bar(change.Size, second, now).With(("class", "now")),
            Svg.Line(_left + before, middle - 3, _left + before, second + BarHeight + 3, Palette.Accent, 1.2, "2 2"),
            Svg.Text(_width - 4, second + (BarHeight * 0.8), Value(change.Size, change.Now), _size, Palette.Ink, "end")
        );
        rows.Add(row);
        return second + BarHeight + 14;
    }

    private static XElement Zone(double x, double y, double width, double height) =>
        Svg.Of(
            "rect",
            ("class", "zone"),
            ("x", x),
            ("y", y),
            ("width", width),
            ("height", height),
            ("fill", Palette.Tint),
            ("stroke", Palette.Accent),
            ("stroke-width", 0.7),
            ("stroke-dasharray", "2 2")
        );

    private XElement Bar(MeasuredSize size, double y, double width)
    {
        bool lesion = size is MeasuredSize.LesionArea or MeasuredSize.LesionPercent;
        return Svg.Of(
            "rect",
            ("x", _left),
            ("y", y),
            ("width", width),
            ("height", BarHeight),
            ("fill", lesion ? Palette.Ink : Palette.Limb),
            ("stroke", lesion ? "none" : Palette.Soft),
            ("stroke-width", 0.7)
        );
    }

    /// <summary>One scale for all areas, one for all lengths, one for shares; the room is what the values leave.</summary>
    private double PerUnit(MeasuredSize size)
    {
        double largest = _changes
            .Where(change => ScaleOf(change.Size) == ScaleOf(size))
            .Max(change =>
                Math.Max(Math.Max(change.Before, change.Now), Math.Min(change.DetectableAbove, 1.5 * Math.Max(change.Before, change.Now)))
            );
        return largest > 0 ? (PlotRight - _left) / largest : 0;
    }

    private static int ScaleOf(MeasuredSize size) =>
        size switch
        {
            MeasuredSize.LigamentArea or MeasuredSize.LesionArea => 0,
            MeasuredSize.LesionPercent => 1,
            MeasuredSize.Thickness or MeasuredSize.Width => 2,
        };

    private string Name(SizeChange change) => Names.AsTitle(Names.Of(change.Size, Culture), Culture);

    private string Value(MeasuredSize size, double value) =>
        size switch
        {
            MeasuredSize.LigamentArea or MeasuredSize.LesionArea => Figures.Area(new(value), null, Culture),
            MeasuredSize.LesionPercent => Figures.Percent(new(value), null, Culture),
            MeasuredSize.Thickness or MeasuredSize.Width => Figures.Length(new(value), null, Culture),
        };

    private string Words(SizeChange change) =>
        (change.ChangePercent, change.IsDetectable) switch
        {
            _ when change.Now.Equals(change.Before) => Drawings.ComparisonSame,
            (null, true) => Drawings.ComparisonNew,
            (null, false) => Drawings.ComparisonNewCannotTell,
            ({ } percent, true) => Say(
                percent > 0 ? Drawings.ComparisonLarger : Drawings.ComparisonSmaller,
                Figures.SignedPercent(percent, null, Culture)
            ),
            ({ } percent, false) => Say(Drawings.ComparisonCannotTell, Figures.SignedPercent(percent, null, Culture)),
        };

    private DrawingTable TableOf() =>
        new(
            Drawings.ComparisonTableCaption,
            [
                new(Drawings.ColumnSize, false),
                new(Figures.Date(_before.Date, null, Culture), true),
                new(Figures.Date(_now.Date, null, Culture), true),
                new(Drawings.ColumnErrorZone, true),
                new(Drawings.ColumnChange, false),
            ],
            [
                .. _changes.Select(change =>
                    (IReadOnlyList<string>)
                        [
                            Name(change),
                            Value(change.Size, change.Before),
                            Value(change.Size, change.Now),
                            Say(Drawings.ErrorZone, Value(change.Size, change.DetectableBelow), Value(change.Size, change.DetectableAbove)),
                            Words(change),
                        ]
                ),
            ]
        );

    private string DateOf(TrackStep step) =>
        _before.Date.Year == _now.Date.Year ? Figures.ShortDate(step.Date, null, Culture) : Figures.Date(step.Date, null, Culture);

    private string Say(string text, params ReadOnlySpan<object?> arguments) => string.Format(Culture, text, arguments);
}
