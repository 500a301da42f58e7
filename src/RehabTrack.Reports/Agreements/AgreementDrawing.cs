using System.Globalization;
using System.Xml.Linq;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Repeats;
using RehabTrack.Reports.Healing;
using RehabTrack.Reports.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Agreements;

/// <summary>
/// Differences of two measurements of one thing against their mean (Bland and Altman 1986): a point a subject, the bias, the limits of
/// agreement with the interval of each, and the line of no difference. Measurers are told apart by the shape of their points.
/// </summary>
public sealed class AgreementDrawing
{
    private const int Shapes = 4;
    private readonly Agreement _agreement;
    private readonly AgreementOptions _options;
    private readonly double _width;
    private readonly double _size;
    private readonly IReadOnlyList<string?> _measurers;

    private AgreementDrawing(Agreement agreement, AgreementOptions options)
    {
        _agreement = agreement;
        _options = options;
        _width = options.Width == WidthClass.Phone ? 360 : 640;
        _size = options.Width == WidthClass.Phone ? 14 : 13;
        _measurers =
        [
            .. agreement.Points.Select(point => point.Measurer).Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.Ordinal),
        ];
    }

    /// <summary>Draws the differences.</summary>
    /// <param name="agreement">What is drawn.</param>
    /// <param name="options">How it is drawn.</param>
    public static Picture Draw(Agreement agreement, AgreementOptions options)
    {
        ArgumentNullException.ThrowIfNull(agreement);
        ArgumentNullException.ThrowIfNull(options);
        return new AgreementDrawing(agreement, options).Draw();
    }

    private CultureInfo Culture => _options.Culture;

    private Picture Draw()
    {
        string title = _agreement is { First: { } first, Second: { } second }
            ? Say(Drawings.AgreementTitleOfTwo, Names.Of(_options.Size, Culture), first, second)
            : Say(Drawings.AgreementTitleOfRepeats, Names.Of(_options.Size, Culture));
        string description = Say(
            Drawings.AgreementDescription,
            _agreement.Points.Count,
            Value(_agreement.Bias),
            Value(_agreement.Limits.Lower),
            Value(_agreement.Limits.Upper)
        );
        double top = _size + 16;
        double bottom = top + 230;
        // The scale is the same up and down, so that a bias shows as one.
        double reach = _agreement
            .Points.Select(point => Math.Abs(point.Difference))
            .Append(Math.Abs(_agreement.Limits.Lower) + _agreement.LimitHalfWidth)
            .Append(Math.Abs(_agreement.Limits.Upper) + _agreement.LimitHalfWidth)
            .Max();
        reach = reach > 0 ? reach * 1.05 : 1;
        ValueAxis up = ValueAxis.Holding(-reach, reach, false, top, bottom, 6);
        double left = 4 + up.Ticks.Max(tick => Svg.WidthOf(Signed(tick, up.Format), _size)) + 8;
        double right = _width - 8;
        double lowest = _agreement.Points.Min(point => point.Mean);
        double highest = _agreement.Points.Max(point => point.Mean);
        ValueAxis along = ValueAxis.Holding(lowest, highest > lowest ? highest : lowest + 1, false, right, left, 5);
        XElement root = Svg.Root(_width, bottom + (2 * _size) + 22 + LegendHeight, false, title, description, _options.IdPrefix);
        XElement scenery = Svg.Of("g", ("aria-hidden", "true"));
        scenery.Add(Svg.Text(4, _size + 2, Say(Drawings.AgreementUp, Unit), _size, Palette.Soft));
        foreach (double tick in up.Ticks)
        {
            scenery.Add(
                Svg.Line(left, up.YOf(tick), right, up.YOf(tick), Palette.Line, tick == 0 ? 1.6 : 0.8),
                Svg.Text(left - 6, up.YOf(tick) + (_size * 0.35), Signed(tick, up.Format), _size, Palette.Soft, "end")
            );
        }

        Band(scenery, up, left, right, _agreement.Limits.Lower);
        Band(scenery, up, left, right, _agreement.Limits.Upper);
        scenery.Add(Svg.Line(left, up.YOf(_agreement.Bias), right, up.YOf(_agreement.Bias), Palette.Accent, 1.8).With(("class", "bias")));
        foreach (double tick in along.Ticks.Where(tick => tick >= lowest - 1e-9 || along.Ticks.Count() < 3))
        {
            double x = XOf(along, tick, left, right);
            scenery.Add(Svg.Text(x, bottom + _size + 8, Figures.Number(tick, along.Format, Culture), _size, Palette.Soft, "middle"));
        }

        scenery.Add(Svg.Text(right, bottom + (2 * _size) + 14, Say(Drawings.AgreementAlong, Unit), _size, Palette.Soft, "end"));
        XElement points = Svg.Of("g", ("class", "points"));
        foreach (AgreementPoint point in _agreement.Points)
        {
            points.Add(Mark(XOf(along, point.Mean, left, right), up.YOf(point.Difference), ShapeOf(point.Measurer)));
        }

        scenery.Add(points);
        Legend(scenery, bottom + (2 * _size) + 22);
        root.Add(scenery);
        return new Picture
        {
            Root = root,
            Width = _width,
            Height = bottom + (2 * _size) + 22 + LegendHeight,
            Title = title,
            Description = description,
            Table = TableOf(title),
        };
    }

    private double LegendHeight => _measurers.Count > 1 ? (_measurers.Count * (_size + 8)) + 6 : 6;

    private string Unit => _options.Size is MeasuredSize.LigamentArea or MeasuredSize.LesionArea ? Drawings.UnitArea : Drawings.UnitLength;

    private static double XOf(ValueAxis along, double value, double left, double right) =>
        left + 10 + ((right - left - 20) * (Math.Clamp(value, along.From, along.To) - along.From) / (along.To - along.From));

    private void Band(XElement scenery, ValueAxis up, double left, double right, double limit)
    {
        double high = up.YOf(limit + _agreement.LimitHalfWidth);
        double low = up.YOf(limit - _agreement.LimitHalfWidth);
        scenery.Add(
            Svg.Of(
                "rect",
                ("class", "limit-interval"),
                ("x", left),
                ("y", high),
                ("width", right - left),
                ("height", Math.Max(low - high, 0.5)),
                ("fill", Palette.Tint),
                ("fill-opacity", 0.6)
            ),
            Svg.Line(left, up.YOf(limit), right, up.YOf(limit), Palette.Accent, 1.4, "6 4").With(("class", "limit")),
            Svg.Text(right - 4, up.YOf(limit) - 5, Value(limit), _size, Palette.Ink, "end", halo: true)
        );
    }

    private int ShapeOf(string? measurer) =>
        Math.Max(0, _measurers.ToList().FindIndex(one => string.Equals(one, measurer, StringComparison.OrdinalIgnoreCase))) % Shapes;

    private static XElement Mark(double x, double y, int shape) =>
        shape switch
        {
            0 => Svg.Of("circle", ("class", "point"), ("cx", x), ("cy", y), ("r", 5)).With(("fill", Palette.Ink)),
            1 => Svg.Of("rect", ("class", "point"), ("x", x - 4.5), ("y", y - 4.5), ("width", 9), ("height", 9))
                .With(("fill", Palette.Sheet), ("stroke", Palette.Ink), ("stroke-width", 1.8)),
            2 => Svg.Of("path", ("class", "point"), ("d", $"M{N(x)} {N(y - 6)}L{N(x + 6)} {N(y + 5)}H{N(x - 6)}Z"))
                .With(("fill", Palette.Ink)),
            _ => Svg.Of("path", ("class", "point"), ("d", $"M{N(x)} {N(y - 6)}L{N(x + 6)} {N(y)}L{N(x)} {N(y + 6)}L{N(x - 6)} {N(y)}Z"))
                .With(("fill", Palette.Sheet), ("stroke", Palette.Ink), ("stroke-width", 1.8)),
        };

    private void Legend(XElement scenery, double top)
    {
        if (_measurers.Count < 2)
        {
            return;
        }

        foreach ((int index, string? measurer) in _measurers.Index())
        {
            double y = top + 6 + (index * (_size + 8)) + (_size / 2);
            scenery.Add(
                Mark(12, y, index % Shapes),
                Svg.Text(26, y + (_size * 0.35), measurer ?? Drawings.AgreementNobody, _size, Palette.Ink)
            );
        }
    }

    private DrawingTable TableOf(string title) =>
        new(
            title,
            [
                new(Drawings.ColumnSubject, false),
                new(Drawings.ColumnMeasurer, false),
                new(Drawings.ColumnMean, true),
                new(Drawings.ColumnDifference, true),
            ],
            [
                .. _agreement.Points.Select(point =>
                    (IReadOnlyList<string>)
                        [
                            point.Subject,
                            point.Measurer
                                ?? (_agreement.First is null ? Drawings.AgreementNobody : $"{_agreement.First}, {_agreement.Second}"),
                            Value(point.Mean),
                            Value(point.Difference),
                        ]
                ),
            ]
        );

    private string Value(double value) => $"{Figures.Number(value, "0.000", Culture)}\u00a0{Unit}";

    private string Signed(double value, string format) =>
        value > 0 ? "+" + Figures.Number(value, format, Culture) : Figures.Number(value, format, Culture);

    private static string N(double value) => Svg.Written(value);

    private string Say(string text, params ReadOnlySpan<object?> arguments) => string.Format(Culture, text, arguments);
}
