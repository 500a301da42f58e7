using System.Xml.Linq;
using RehabTrack.Rechecks.Care;
using RehabTrack.Reports.Healing;
using RehabTrack.Reports.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Exercise;

/// <summary>
/// Treatments, medicines and signs of a horse in three rows on the time axis of the chart that stands over them: a diamond a treatment,
/// filled where something was put into the lesion; a bar a medicine; a triangle a sign, open where it was seen at the yard. A vet's
/// stand-down date is a line to its day.
/// </summary>
public sealed class CareStrip
{
    private readonly TimeAxis _time;
    private readonly IReadOnlyList<CareMark> _marks;
    private readonly IReadOnlyList<StandDownMark> _standDowns;
    private readonly StripOptions _options;
    private readonly ChartFrame _frame;
    private readonly double _width;
    private readonly double _small;

    private CareStrip(TimeAxis time, IReadOnlyList<CareMark> marks, IReadOnlyList<StandDownMark> standDowns, StripOptions options)
    {
        _time = time;
        _marks = [.. marks.Where(mark => mark.From <= time.To && EndOf(mark, time) >= time.From).OrderBy(mark => mark.From)];
        _standDowns = [.. standDowns.Where(mark => mark.From <= time.To && mark.Until >= time.From)];
        _options = options;
        _frame = new ChartFrame(options.Width);
        (_width, _small) = (_frame.Width, _frame.Small);
    }

    /// <summary>Draws the rows; null when nothing falls on the axis.</summary>
    /// <param name="time">The axis of the chart over it, drawn for the same width.</param>
    /// <param name="marks">The marks; those outside the axis are left out.</param>
    /// <param name="standDowns">The vet's stand-down dates.</param>
    /// <param name="options">How it is drawn.</param>
    public static Picture? Draw(TimeAxis time, IReadOnlyList<CareMark> marks, IReadOnlyList<StandDownMark> standDowns, StripOptions options)
    {
        ArgumentNullException.ThrowIfNull(time);
        ArgumentNullException.ThrowIfNull(marks);
        ArgumentNullException.ThrowIfNull(standDowns);
        ArgumentNullException.ThrowIfNull(options);
        CareStrip strip = new(time, marks, standDowns, options);
        return strip._marks.Count + strip._standDowns.Count == 0 ? null : strip.Draw();
    }

    private double RowHeight => (2 * _small) + 8;

    private Picture Draw()
    {
        string description = Say(Drawings.CareDescription, Count(CareGroup.Treatment), Count(CareGroup.Medicine), Count(CareGroup.Sign));
        XElement scenery = Svg.Of("g", ("class", "scenery"), ("aria-hidden", "true"));
        double top = 4;
        foreach (CareGroup group in Enum.GetValues<CareGroup>().Where(group => Count(group) > 0))
        {
            top = Row(scenery, group, top);
        }

        foreach (StandDownMark standDown in _standDowns)
        {
            top = StandDown(scenery, standDown, top);
        }

        double height = Legend(scenery, top);
        XElement root = Svg.Root(_width, height, false, Drawings.CareTitle, description, _options.IdPrefix);
        root.Add(scenery);
        return new Picture
        {
            Root = root,
            Width = _width,
            Height = height,
            Title = Drawings.CareTitle,
            Description = description,
            Table = Table(),
        };
    }

    private double Row(XElement scenery, CareGroup group, double top)
    {
        double line = top + _small + 8;
        scenery.Add(Svg.Line(_frame.PlotLeft, line, _frame.PlotRight, line, Palette.Line, 0.8));
        double free = double.NegativeInfinity;
        foreach (CareMark mark in _marks.Where(mark => mark.Group == group))
        {
            double x = XIn(mark.From);
            double end = XIn(EndOf(mark, _time));
            scenery.Add(
                group switch
                {
                    CareGroup.Medicine => Svg.Of(
                        "rect",
                        ("class", "care"),
                        ("data-group", group.ToString()),
                        ("x", x),
                        ("y", line - 4),
                        ("width", Math.Max(end - x, 3)),
                        ("height", 8),
                        ("fill", Palette.Limb),
                        ("stroke", Palette.Soft),
                        ("stroke-width", 1)
                    ),
                    _ => Shape(mark)
                        .With(("class", "care"), ("data-group", group.ToString()), ("transform", $"translate({N(x)} {N(line)})")),
                }
            );
            double half = Svg.WidthOf(mark.Text, _small) / 2;
            double middle = Math.Clamp(x, half + 2, _width - half - 2);
            if (middle - half > free + 6)
            {
                free = middle + half;
                scenery.Add(Svg.Text(middle, top + _small, mark.Text, _small, Palette.Ink, "middle", kind: "care-text"));
            }
        }

        return top + RowHeight;
    }

    private double StandDown(XElement scenery, StandDownMark mark, double top)
    {
        double line = top + _small + 8;
        double from = XIn(mark.From);
        double until = XIn(mark.Until);
        string text = Say(Drawings.CareStandDownUntil, Figures.Date(mark.Until, null, _options.Culture));
        double half = Svg.WidthOf(text, _small) / 2;
        scenery.Add(
            Svg.Line(from, line, until, line, Palette.Ink, 2, "2 4").With(("class", "stand-down")),
            Svg.Line(until, line - 6, until, line + 6, Palette.Ink, 2),
            Svg.Text(Math.Clamp((from + until) / 2, half + 2, _width - half - 2), top + _small, text, _small, Palette.Ink, "middle")
        );
        return top + RowHeight;
    }

    private static XElement Shape(CareMark mark) =>
        mark.Group == CareGroup.Treatment
            ? Svg.Of(
                "path",
                ("d", "M0 -7L7 0L0 7L-7 0Z"),
                ("fill", mark.IsIntoLesion ? Palette.Accent : Palette.Sheet),
                ("stroke", Palette.Accent),
                ("stroke-width", 1.6)
            )
            : Svg.Of(
                "path",
                ("d", "M0 -6L6 5H-6Z"),
                ("fill", mark.IsFromLog ? Palette.Sheet : Palette.Amber),
                ("stroke", Palette.Amber),
                ("stroke-width", 1.6)
            );

    private double Legend(XElement scenery, double top)
    {
        LegendRow row = new(_width, _small, 22, top + _small + 4);
        void Entry(string text, XElement shape)
        {
            (double x, double y) = row.Next(text);
            scenery.Add(shape.With(("transform", $"translate({N(x + 8)} {N(y - 4)})")), Svg.Text(x + 22, y, text, _small, Palette.Soft));
        }

        foreach (
            CareMark example in _marks
                .DistinctBy(mark => (mark.Group, mark.IsIntoLesion, mark.IsFromLog))
                .OrderBy(mark => mark.Group)
                .ThenByDescending(mark => mark.IsIntoLesion)
                .ThenBy(mark => mark.IsFromLog)
        )
        {
            Entry(
                example.Group switch
                {
                    CareGroup.Treatment => example.IsIntoLesion ? Drawings.CareIntoLesion : Drawings.CareTreatment,
                    CareGroup.Medicine => Drawings.CareMedicine,
                    CareGroup.Sign => example.IsFromLog ? Drawings.CareSignFromYard : Drawings.CareSign,
                },
                example.Group == CareGroup.Medicine
                    ? Svg.Of(
                        "rect",
                        ("x", -7),
                        ("y", -4),
                        ("width", 14),
                        ("height", 8),
                        ("fill", Palette.Limb),
                        ("stroke", Palette.Soft),
                        ("stroke-width", 1)
                    )
                    : Shape(example)
            );
        }

        if (_standDowns.Count > 0)
        {
            Entry(Drawings.CareStandDown, Svg.Line(-8, 0, 8, 0, Palette.Ink, 2, "2 4"));
        }

        return row.Y + 8;
    }

    private DrawingTable Table() =>
        new(
            Drawings.CareTableCaption,
            [
                new(Drawings.ColumnDate, false),
                new(Drawings.CareColumnUntil, false),
                new(Drawings.CareColumnGroup, false),
                new(Drawings.CareColumnWhat, false),
                new(Drawings.CareColumnSource, false),
            ],
            [
                .. _marks.Select(mark =>
                    new[]
                    {
                        Figures.Date(mark.From, null, _options.Culture),
                        mark.Until is { } until ? Figures.Date(until, null, _options.Culture)
                        : mark.Group == CareGroup.Medicine ? Drawings.CareStillGiven
                        : "",
                        Names.Of(mark.Group, _options.Culture),
                        mark.Full,
                        mark.Source,
                    }
                ),
                .. _standDowns.Select(mark =>
                    new[]
                    {
                        Figures.Date(mark.From, null, _options.Culture),
                        Figures.Date(mark.Until, null, _options.Culture),
                        Drawings.CareStandDown,
                        Say(Drawings.CareStandDownUntil, Figures.Date(mark.Until, null, _options.Culture)),
                        Say(Drawings.CareEnteredBy, mark.By),
                    }
                ),
            ]
        );

    private int Count(CareGroup group) => _marks.Count(mark => mark.Group == group);

    private double XIn(DateOnly date) => Math.Clamp(_time.XOf(date), _frame.PlotLeft, _frame.PlotRight);

    private static DateOnly EndOf(CareMark mark, TimeAxis time) => mark.Until ?? (mark.Group == CareGroup.Medicine ? time.To : mark.From);

    private string Say(string text, params ReadOnlySpan<object?> arguments) => string.Format(_options.Culture, text, arguments);

    private static string N(double value) => Svg.Written(value);
}
