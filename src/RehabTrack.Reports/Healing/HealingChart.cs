using System.Xml.Linq;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Reports.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Healing;

/// <summary>
/// The healing chart: the measure that speaks, over time, with the 95 % error of each value as a band. A step that stands clear of the error
/// of both its ends is a line; a step inside it is dotted, because nobody can tell. Over the examinations that decide stand the verdict and
/// the rate; beside the trend that decides runs the slowest acceptable rate, so that the eye compares what the rule compares.
/// </summary>
public sealed class HealingChart
{
    private const int MostDatesOnPhone = 4;

    private readonly CaseCourse _course;
    private readonly CaseAnalysis _analysis;
    private readonly HealingOptions _options;
    private readonly HealingWords _words;
    private readonly Trend _trend;
    private readonly bool _phone;
    private readonly ChartFrame _frame;
    private readonly double _width;
    private readonly double _small;
    private readonly double _figure;

    private HealingChart(CaseCourse course, CaseAnalysis analysis, HealingOptions options)
    {
        _course = course;
        _analysis = analysis;
        _options = options;
        _words = new HealingWords(options.Culture);
        _trend = options.Trend ?? analysis.Trend;
        _phone = options.Width == WidthClass.Phone;
        _frame = new ChartFrame(options.Width);
        (_width, _small) = (_frame.Width, _frame.Small);
        _figure = _phone ? 14 : 13;
    }

    /// <summary>Draws the healing chart of a case, or of one of its lesions.</summary>
    /// <param name="course">The case: its onset and target.</param>
    /// <param name="analysis">The analysis of the same course.</param>
    /// <param name="options">How it is drawn.</param>
    public static HealingChartPicture Draw(CaseCourse course, CaseAnalysis analysis, HealingOptions options)
    {
        ArgumentNullException.ThrowIfNull(course);
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(options);
        HealingChart chart = new(course, analysis, options);
        return chart._trend.Measure is { } measure && chart._trend.Series.Count > 0 ? chart.Draw(measure) : chart.Empty();
    }

    private HealingChartPicture Empty()
    {
        double height = _phone ? 90 : 110;
        XElement root = Svg.Root(_width, height, false, Drawings.HealingTitleEmpty, Drawings.HealingEmptyText, _options.IdPrefix);
        double y = (height / 2) - 6;
        root.Add(Svg.Text(_width / 2, y, Drawings.HealingTitleEmpty, _figure + 1, Palette.Ink, "middle", 600));
        foreach (string line in Svg.Wrapped(Drawings.HealingEmptyText, _width - 16, _small))
        {
            y += _small + 6;
            root.Add(Svg.Text(_width / 2, y, line, _small, Palette.Soft, "middle"));
        }

        return new HealingChartPicture
        {
            Root = root,
            Width = _width,
            Height = height,
            Title = Drawings.HealingTitleEmpty,
            Description = Drawings.HealingEmptyText,
            Table = new DrawingTable(Drawings.HealingTableCaption, [new(Drawings.ColumnDate, false)], []),
            Axis = null,
            Points = [],
        };
    }

    private HealingChartPicture Draw(Measure measure)
    {
        IReadOnlyList<SeriesPoint> series = _trend.Series;
        IReadOnlyList<PointStep> steps = PointStep.Of(series);
        double? target = TargetOf(measure);
        TimeAxis time = TimeOf(series);
        double top = _small + 10 + (_trend.Window is null ? 6 : Bracket.HeightOf(_phone));
        double bottom = top + (_phone ? 190 : 210);
        ValueAxis values = ValueAxis.Holding(
            series.Min(point => point.Lower95) * 0.92,
            Math.Max(series.Max(point => point.Upper95) * RoomForFigures(bottom - top), (target ?? 0) * 1.1),
            measure != Measure.Thickness,
            top,
            bottom,
            _phone ? 4 : 5
        );

        string title = _words.TitleOf(_trend, measure, series[0].Date, series[^1].Date);
        string description = _words.DescriptionOf(_trend, measure, steps, target);
        XElement scenery = Svg.Of("g", ("class", "scenery"), ("aria-hidden", "true"));
        FirstWeeks(scenery, target, time, values);
        Rules(scenery, measure, time, values);
        double below = Dates(scenery, time, bottom);
        Band(scenery, series, time, values);
        Target(scenery, measure, target, time, values);
        DecidingTrend? deciding = DecidingTrend.Of(_trend, measure);
        deciding?.Draw(scenery, time, values);
        Steps(scenery, steps, time, values);
        if (_trend.Window is { } window)
        {
            Bracket.Draw(scenery, _trend, window, _words, time, top, _width, _phone);
        }

        EndLabels(scenery, measure, target, deciding, time, values);
        (XElement legend, double height) = HealingLegend.Of(this, measure, target, deciding, steps, below);
        XElement root = Svg.Root(_width, height, _options.Interactive, title, description, _options.IdPrefix);
        root.Add(scenery);
        List<ChartPoint> points = [];
        for (int i = 0; i < series.Count; i++)
        {
            IReadOnlyList<string> lines =
            [
                .. _words.LinesOf(measure, series[i], i == 0 ? null : steps[i - 1]),
                .. _options.DaysAfterInjection.TryGetValue(series[i].ExaminationId, out int days)
                    ? [string.Format(_options.Culture, Drawings.HealingAfterInjectionPoint, days)]
                    : Array.Empty<string>(),
            ];
            ChartPoint point = new(
                series[i].ExaminationId,
                series[i].Date,
                time.XOf(series[i].Date),
                values.YOf(series[i].Value),
                string.Join(", ", lines)
            );
            points.Add(point);
            root.Add(Point(point, series[i], lines, ShowsValue(i), measure, values));
        }

        root.Add(legend);
        return new HealingChartPicture
        {
            Root = root,
            Width = _width,
            Height = height,
            Title = title,
            Description = description,
            Table = _words.TableOf(measure, series, steps),
            Axis = time,
            Points = points,
        };
    }

    internal bool IsPhone => _phone;

    internal double Width => _width;

    internal double Small => _small;

    internal Trend Trend => _trend;

    internal HealingWords Words => _words;

    internal double SlowestLogPer60Days => _trend.SlowestAcceptableLogPer60Days;

    /// <summary>The figure of the highest point stands over its error, inside the plot.</summary>
    private double RoomForFigures(double height) => 1 / (1 - ((_figure + 9) / height));

    private bool ShowsValue(int point) =>
        point == _trend.Series.Count - 1 || (_phone ? point == FirstInTrend : point == 0 || _trend.Series.Count <= 9);

    private int FirstInTrend => Math.Max(_trend.Series.ToList().FindIndex(point => point.InTrend), 0);

    private double? TargetOf(Measure measure)
    {
        SeriesPoint? first = _trend.Series.FirstOrDefault(point => point.InTrend);
        return MeasureRules.HasRate(measure) && first is { Value: > 0 }
            ? first.Value * (_course.TargetFraction ?? _analysis.Settings.Trend.TargetFraction)
            : null;
    }

    private DateOnly? LatestInjury => _course.Reinjury is { } again && again > _course.Onset ? again : _course.Onset ?? _course.Reinjury;

    /// <summary>An axis of its own, as charts drawn for the same width have it.</summary>
    /// <param name="from">The date at the left end.</param>
    /// <param name="to">The date at the right end.</param>
    /// <param name="width">For which width.</param>
    public static TimeAxis AxisOf(DateOnly from, DateOnly to, WidthClass width) => new ChartFrame(width).AxisOf(from, to);

    private TimeAxis TimeOf(IReadOnlyList<SeriesPoint> series)
    {
        // A shared axis holds every point, whatever stretch was asked for.
        if (_options.Axis is { } shared)
        {
            return _frame.AxisOf(
                shared.From < series[0].Date ? shared.From : series[0].Date,
                shared.To > series[^1].Date ? shared.To : series[^1].Date
            );
        }

        DateOnly first = series[0].Date;
        DateOnly last = series[^1].Date > _analysis.AsOf ? series[^1].Date : _analysis.AsOf;
        if (LatestInjury is { } injury && injury < first && first.DayNumber - injury.DayNumber <= 60)
        {
            first = injury;
        }

        // One visit is given two months around it, so that its error does not look like a wall.
        if (last.DayNumber - first.DayNumber < 30)
        {
            first = first.AddDays(-15);
            last = last.AddDays(15);
        }

        return _frame.AxisOf(first, last);
    }

    private double PlotLeft => _frame.PlotLeft;

    private double PlotRight => _frame.PlotRight;

    private void FirstWeeks(XElement scenery, double? target, TimeAxis time, ValueAxis values)
    {
        if (LatestInjury is not { } injury || injury.AddDays(_analysis.Settings.Trend.AcutePhaseDays) <= time.From)
        {
            return;
        }

        double from = Math.Max(time.XOf(injury), PlotLeft);
        double to = Math.Min(time.XOf(injury.AddDays(_analysis.Settings.Trend.AcutePhaseDays)), PlotRight);
        if (to - from < 2)
        {
            return;
        }

        scenery.Add(
            Svg.Of(
                "rect",
                ("class", "first-weeks"),
                ("x", from),
                ("y", values.Top),
                ("width", to - from),
                ("height", values.Bottom - values.Top),
                ("fill", Palette.Line),
                ("fill-opacity", 0.3)
            )
        );
        if (to - from > Svg.WidthOf(Drawings.HealingFirstWeeks, _small) + 8)
        {
            double line = target is { } value ? values.YOf(value) : values.Top;
            double y = values.Bottom - line < _small + 12 ? line - 5 : values.Bottom - 6;
            scenery.Add(Svg.Text(from + 5, y, Drawings.HealingFirstWeeks, _small, Palette.Soft));
        }
    }

    private void Rules(XElement scenery, Measure measure, TimeAxis time, ValueAxis values)
    {
        string axis = string.Format(_options.Culture, Drawings.HealingAxis, Names.Of(measure, _options.Culture), _words.UnitOf(measure));
        scenery.Add(Svg.Text(4, _small + 2, axis, _small, Palette.Soft, kind: "axis-title"));
        foreach (double tick in values.Ticks)
        {
            double y = values.YOf(tick);
            bool ground = tick == values.From;
            scenery.Add(
                Svg.Line(PlotLeft, y, PlotRight, y, ground ? Palette.Ink : Palette.Line, ground ? 1.1 : 0.8),
                Svg.Text(
                    PlotLeft - 8,
                    y + (_small * 0.35),
                    Figures.Number(tick, values.Format, _options.Culture),
                    _small,
                    Palette.Soft,
                    "end",
                    kind: "value"
                )
            );
        }

        if (_analysis.AsOf.DayNumber - _trend.Series[^1].Date.DayNumber >= 4)
        {
            double x = time.XOf(_analysis.AsOf);
            double half = Svg.WidthOf(Drawings.HealingToday, _small) / 2;
            scenery.Add(
                Svg.Line(x, values.Top, x, values.Bottom + 5, Palette.Soft, 1, "2 3").With(("class", "today")),
                Svg.Text(
                    Math.Min(x, _width - half - 2),
                    values.Bottom + _figure + _small + 12,
                    Drawings.HealingToday,
                    _small,
                    Palette.Soft,
                    "middle"
                )
            );
        }
    }

    /// <summary>Every examination has its tick; dates are written where they have room, the last, the first and the window's first before others.</summary>
    private double Dates(XElement scenery, TimeAxis time, double bottom)
    {
        DateOnly[] dates = [.. _trend.Series.Select(point => point.Date).Distinct()];
        foreach (DateOnly date in dates)
        {
            scenery.Add(Svg.Line(time.XOf(date), bottom, time.XOf(date), bottom + 5, Palette.Ink, 1.1));
        }

        DateOnly? windowFrom = _trend.Window?.From;
        List<DateOnly> written = [];
        foreach (
            DateOnly date in dates
                .OrderByDescending(date => date == dates[^1])
                .ThenByDescending(date => date == dates[0])
                .ThenByDescending(date => date == windowFrom)
                .ThenByDescending(date => date)
        )
        {
            double half = Svg.WidthOf(Figures.ShortDate(date, null, _options.Culture), _figure);
            if (
                (!_phone || written.Count < MostDatesOnPhone)
                && written.TrueForAll(other => Math.Abs(time.XOf(other) - time.XOf(date)) > half + 8)
            )
            {
                written.Add(date);
            }
        }

        int? year = null;
        foreach (DateOnly date in written.Order())
        {
            double x = time.XOf(date);
            scenery.Add(
                Svg.Text(
                    x,
                    bottom + _figure + 8,
                    Figures.ShortDate(date, null, _options.Culture),
                    _figure,
                    Palette.Ink,
                    "middle",
                    600,
                    "date"
                )
            );
            if (year != date.Year)
            {
                scenery.Add(
                    Svg.Text(x, bottom + _figure + _small + 12, date.Year.ToString(_options.Culture), _small, Palette.Soft, "middle")
                );
            }

            year = date.Year;
        }

        return bottom + _figure + _small + 16;
    }

    private static void Band(XElement scenery, IReadOnlyList<SeriesPoint> series, TimeAxis time, ValueAxis values)
    {
        for (int i = 1; i < series.Count; i++)
        {
            (SeriesPoint from, SeriesPoint to) = (series[i - 1], series[i]);
            scenery.Add(
                Svg.Of(
                    "path",
                    ("class", "band"),
                    (
                        "d",
                        $"M{N(time.XOf(from.Date))} {N(values.YOf(from.Upper95))}L{N(time.XOf(to.Date))} {N(values.YOf(to.Upper95))}"
                            + $"V{N(values.YOf(to.Lower95))}L{N(time.XOf(from.Date))} {N(values.YOf(from.Lower95))}Z"
                    ),
                    ("fill", Palette.Tint),
                    ("fill-opacity", from.InTrend && to.InTrend ? null : 0.45)
                )
            );
        }

        foreach (SeriesPoint point in series)
        {
            (double x, double upper, double lower) = (time.XOf(point.Date), values.YOf(point.Upper95), values.YOf(point.Lower95));
            scenery.Add(
                Svg.Of(
                    "path",
                    ("class", "error"),
                    ("d", $"M{N(x - 5)} {N(upper)}H{N(x + 5)}M{N(x)} {N(upper)}V{N(lower)}M{N(x - 5)} {N(lower)}H{N(x + 5)}"),
                    ("fill", "none"),
                    ("stroke", point.InTrend ? Palette.Accent : Palette.Soft),
                    ("stroke-opacity", 0.55),
                    ("stroke-width", 1.3)
                )
            );
        }
    }

    private static void Steps(XElement scenery, IReadOnlyList<PointStep> steps, TimeAxis time, ValueAxis values)
    {
        foreach (PointStep step in steps)
        {
            bool inTrend = step.From.InTrend && step.To.InTrend;
            scenery.Add(
                Svg.Line(
                        time.XOf(step.From.Date),
                        values.YOf(step.From.Value),
                        time.XOf(step.To.Date),
                        values.YOf(step.To.Value),
                        inTrend ? Palette.Accent : Palette.Soft,
                        step.InsideError ? 2 : 2.6,
                        step.InsideError ? "0.1 6" : null
                    )
                    .With(
                        ("class", step.InsideError ? "step step-inside" : "step step-clear"),
                        ("stroke-linecap", "round"),
                        ("stroke-opacity", inTrend ? null : 0.7)
                    )
            );
        }
    }

    private void Target(XElement scenery, Measure measure, double? target, TimeAxis time, ValueAxis values)
    {
        if (target is { } value)
        {
            double y = values.YOf(value);
            scenery.Add(Svg.Line(PlotLeft, y, PlotRight, y, Palette.Accent, 1.2, "8 3 1.5 3").With(("class", "target")));
        }
    }

    /// <summary>On a desk the lines are named at their right end; on a phone the legend names them.</summary>
    private void EndLabels(XElement scenery, Measure measure, double? target, DecidingTrend? deciding, TimeAxis time, ValueAxis values)
    {
        if (_phone)
        {
            return;
        }

        double x = PlotRight + 6;
        double free = double.PositiveInfinity;
        if (target is { } value)
        {
            double y = values.YOf(value);
            scenery.Add(Svg.Text(x, y + (_small * 0.35), _words.Target(measure, value), _small, Palette.Soft));
            free = y - _small;
        }

        if (deciding is not null)
        {
            double end = values.YOf(deciding.SlowestAt(_trend.Window!.To));
            double y = Math.Min(end + (_small * 0.35), free - _small - 8);
            double from = time.XOf(_trend.Window.To);
            scenery.Add(
                Svg.Line(from + 4, end, PlotRight + 2, y - (_small * 0.3), Palette.Soft, 0.7),
                Svg.Text(x, y, Drawings.HealingSlowest, _small, Palette.Soft),
                Svg.Text(x, y + _small + 3, _words.Slowest(Drawings.HealingSlowestRate, SlowestLogPer60Days), _small, Palette.Soft)
            );
        }
    }

    private XElement Point(
        ChartPoint point,
        SeriesPoint value,
        IReadOnlyList<string> lines,
        bool showsValue,
        Measure measure,
        ValueAxis values
    )
    {
        bool chosen = _options.SelectedExaminations.Contains(point.ExaminationId, StringComparer.Ordinal);
        string colour = value.InTrend ? Palette.Accent : Palette.Soft;
        double radius = value.InTrend ? 5.5 : 4.5;
        XElement group = Svg.Of(
            "g",
            ("class", "point" + (chosen ? " chosen" : "") + (value.Complete ? "" : " open") + (value.InTrend ? "" : " pale")),
            ("role", _options.Interactive ? "button" : "img"),
            ("tabindex", _options.Interactive ? "0" : null),
            ("aria-pressed", _options.Interactive && chosen ? "true" : null),
            ("aria-label", point.Label),
            ("data-examination", point.ExaminationId)
        );
        group.Add(
            Svg.Of("title").Saying(string.Join('\n', lines)),
            Svg.Of(
                "circle",
                ("class", "hit"),
                ("cx", point.X),
                ("cy", point.Y),
                ("r", _phone ? 20 : 14),
                ("fill", "none"),
                ("pointer-events", "all")
            ),
            Svg.Of(
                "circle",
                ("class", "ring"),
                ("cx", point.X),
                ("cy", point.Y),
                ("r", 10),
                ("fill", "none"),
                ("stroke", chosen ? Palette.Accent : "none"),
                ("stroke-width", 2.2)
            ),
            Svg.Of(
                "circle",
                ("class", "dot"),
                ("cx", point.X),
                ("cy", point.Y),
                ("r", radius),
                ("fill", value.Complete ? colour : Palette.Sheet),
                ("stroke", colour),
                ("stroke-width", 2.2)
            )
        );
        if (IsAfterInjection(value))
        {
            group.Add(InjectionFrame(point.X, point.Y, 10));
        }

        if (showsValue)
        {
            group.Add(
                Svg.Text(
                    point.X,
                    values.YOf(value.Upper95) - 6,
                    _words.Value(measure, value.Value),
                    _figure,
                    value.InTrend ? Palette.Ink : Palette.Soft,
                    "middle",
                    600,
                    "figure",
                    true
                )
            );
        }

        return group;
    }

    /// <summary>Whether the examination stands soon after an injection into the lesion.</summary>
    internal bool IsAfterInjection(SeriesPoint point) => _options.DaysAfterInjection.ContainsKey(point.ExaminationId);

    /// <summary>The frame of an examination soon after an injection: square, so that it differs from the ring of a chosen one.</summary>
    internal static XElement InjectionFrame(double x, double y, double half) =>
        Svg.Of(
            "rect",
            ("class", "after-injection"),
            ("x", x - half),
            ("y", y - half),
            ("width", 2 * half),
            ("height", 2 * half),
            ("fill", "none"),
            ("stroke", Palette.Ink),
            ("stroke-width", 1.3),
            ("stroke-dasharray", "3 3")
        );

    private static string N(double value) => Svg.Written(value);
}
