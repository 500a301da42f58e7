using System.Xml.Linq;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Reports.Healing;
using RehabTrack.Reports.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Exercise;

/// <summary>
/// The exercise of a horse, week by week, on the time axis of the healing chart that stands over it: minutes done by gait as a column, the
/// minutes permitted as a line over it, a wedge where more was done than permitted, and the days of decisions and concerns below.
/// </summary>
public sealed class ExerciseStrip
{
    private const int DaysOfWeek = PlanRows.DaysOfWeek;

    private readonly TimeAxis _time;
    private readonly IReadOnlyList<WeekAdherence> _weeks;
    private readonly IReadOnlyList<StripMark> _marks;
    private readonly StripOptions _options;
    private readonly ChartFrame _frame;
    private readonly double _width;
    private readonly double _small;

    private ExerciseStrip(TimeAxis time, IReadOnlyList<WeekAdherence> weeks, IReadOnlyList<StripMark> marks, StripOptions options)
    {
        _time = time;
        _weeks = weeks;
        _marks = [.. marks.Where(mark => mark.Date >= time.From && mark.Date <= time.To).OrderBy(mark => mark.Date)];
        _options = options;
        _frame = new ChartFrame(options.Width);
        (_width, _small) = (_frame.Width, _frame.Small);
    }

    /// <summary>Draws the strip.</summary>
    /// <param name="time">The axis of the healing chart over it, drawn for the same width.</param>
    /// <param name="weeks">The weeks in order.</param>
    /// <param name="marks">Decisions, concerns and treatments; those outside the axis are left out.</param>
    /// <param name="options">How it is drawn.</param>
    public static Picture Draw(TimeAxis time, IReadOnlyList<WeekAdherence> weeks, IReadOnlyList<StripMark> marks, StripOptions options)
    {
        ArgumentNullException.ThrowIfNull(time);
        ArgumentNullException.ThrowIfNull(weeks);
        ArgumentNullException.ThrowIfNull(marks);
        ArgumentNullException.ThrowIfNull(options);
        return new ExerciseStrip(time, weeks, marks, options).Draw();
    }

    private Picture Draw()
    {
        double top = _small + 14;
        double bottom = top + (_frame.IsPhone ? 84 : 96);
        int most = Math.Max(60, _weeks.Select(week => Math.Max(week.Done.Total, week.PermittedMinutes)).DefaultIfEmpty().Max());
        ValueAxis minutes = ValueAxis.Holding(0, most, true, top, bottom, 3);
        int over = _weeks.Count(week => week.Standing == AdherenceStanding.Over);
        string description = Say(Drawings.ExerciseDescription, _weeks.Count, over);
        XElement scenery = Svg.Of("g", ("class", "scenery"), ("aria-hidden", "true"));
        Rules(scenery, minutes);
        foreach (WeekAdherence week in _weeks)
        {
            Column(scenery, week, minutes);
        }

        double below = Marks(scenery, bottom);
        double height = Legend(scenery, below, over > 0);
        XElement root = Svg.Root(_width, height, false, Drawings.ExerciseTitle, description, _options.IdPrefix);
        root.Add(scenery);
        return new Picture
        {
            Root = root,
            Width = _width,
            Height = height,
            Title = Drawings.ExerciseTitle,
            Description = description,
            Table = Table(),
        };
    }

    private void Rules(XElement scenery, ValueAxis minutes)
    {
        scenery.Add(Svg.Text(4, _small + 2, Drawings.ExerciseAxis, _small, Palette.Soft, kind: "axis-title"));
        foreach (double tick in minutes.Ticks)
        {
            double y = minutes.YOf(tick);
            scenery.Add(
                Svg.Line(_frame.PlotLeft, y, _frame.PlotRight, y, tick == 0 ? Palette.Ink : Palette.Line, tick == 0 ? 1.1 : 0.8),
                Svg.Text(
                    _frame.PlotLeft - 8,
                    y + (_small * 0.35),
                    Figures.Number(tick, "0", _options.Culture),
                    _small,
                    Palette.Soft,
                    "end",
                    kind: "value"
                )
            );
        }
    }

    private void Column(XElement scenery, WeekAdherence week, ValueAxis minutes)
    {
        double left = Math.Max(_time.XOf(week.From), _frame.PlotLeft);
        double right = Math.Min(_time.XOf(week.From.AddDays(DaysOfWeek)), _frame.PlotRight);
        if (right - left < 1)
        {
            return;
        }

        double gap = Math.Min(1.5, (right - left) / 6);
        double foot = 0;
        foreach (Gait gait in Enum.GetValues<Gait>())
        {
            if (week.Done.Of(gait) is var done and > 0)
            {
                scenery.Add(
                    Box("done", left + gap, right - gap, minutes.YOf(foot + done), minutes.YOf(foot))
                        .With(("fill", FillOf(gait)), ("data-gait", gait.ToString()))
                );
                foot += done;
            }
        }

        double permitted = minutes.YOf(week.PermittedMinutes);
        scenery.Add(Svg.Line(left, permitted, right, permitted, Palette.Ink, 2).With(("class", "permitted")));
        if (week.Standing == AdherenceStanding.Over)
        {
            double x = (left + right) / 2;
            double y = minutes.YOf(Math.Max(week.Done.Total, week.PermittedMinutes)) - 3;
            scenery.Add(
                Svg.Of("path", ("class", "over"), ("d", $"M{N(x - 5)} {N(y - 9)}H{N(x + 5)}L{N(x)} {N(y)}Z"), ("fill", Palette.Red))
            );
        }
    }

    /// <summary>Every mark has its tick; its word is written on the first of two lines that has room, on a phone only a concern's.</summary>
    private double Marks(XElement scenery, double bottom)
    {
        double[] free = [double.NegativeInfinity, double.NegativeInfinity];
        foreach (StripMark mark in _marks)
        {
            double x = _time.XOf(mark.Date);
            string colour = mark.IsConcern ? Palette.Red : Palette.Ink;
            scenery.Add(Svg.Line(x, bottom, x, bottom + 7, colour, mark.IsConcern ? 2.4 : 1.4).With(("class", "event")));
            double half = Svg.WidthOf(mark.Text, _small) / 2;
            double middle = Math.Clamp(x, half + 2, _width - half - 2);
            int line = Array.FindIndex(free, end => middle - half > end + 6);
            if (line >= 0)
            {
                free[line] = middle + half;
                scenery.Add(
                    Svg.Text(
                        middle,
                        bottom + 10 + _small + (line * (_small + 4)),
                        mark.Text,
                        _small,
                        colour,
                        "middle",
                        mark.IsConcern ? 700 : null,
                        "event-text"
                    )
                );
            }
        }

        return bottom + 12 + (_marks.Count == 0 ? 0 : 2 * (_small + 4));
    }

    private double Legend(XElement scenery, double top, bool anyOver)
    {
        LegendRow row = new(_width, _small, 20, top + _small + 6);
        void Entry(string text, XElement mark)
        {
            (double x, double y) = row.Next(text);
            scenery.Add(mark.With(("transform", $"translate({N(x)} {N(y)})")), Svg.Text(x + 20, y, text, _small, Palette.Soft));
        }

        foreach (Gait gait in Enum.GetValues<Gait>().Where(gait => _weeks.Any(week => week.Done.Of(gait) > 0)))
        {
            Entry(Names.AsTitle(Names.Of(gait, _options.Culture)), Box("done", 0, 12, -10, 0).With(("fill", FillOf(gait))));
        }

        Entry(Drawings.ExercisePermitted, Svg.Line(0, -4, 14, -4, Palette.Ink, 2));
        if (anyOver)
        {
            Entry(Drawings.ExerciseOver, Svg.Of("path", ("d", "M1 -10H11L6 -1Z"), ("fill", Palette.Red)));
        }

        return row.Y + 8;
    }

    private DrawingTable Table() =>
        new(
            Drawings.ExerciseTableCaption,
            [
                new(Drawings.ColumnWeek, false),
                new(Drawings.ColumnPermitted, true),
                .. Enum.GetValues<Gait>().Select(gait => new DrawingColumn(Names.AsTitle(Names.Of(gait, _options.Culture)), true)),
                new(Drawings.ColumnStanding, false),
            ],
            [
                .. _weeks.Select(week =>
                    (IReadOnlyList<string>)
                        [
                            Figures.Date(week.From, null, _options.Culture),
                            Minutes(week.PermittedMinutes),
                            .. Enum.GetValues<Gait>().Select(gait => Minutes(week.Done.Of(gait))),
                            Names.Of(week.Standing, _options.Culture),
                        ]
                ),
            ]
        );

    private string Minutes(int minutes) => Say(Drawings.ExerciseMinutes, minutes);

    private static XElement Box(string kind, double left, double right, double top, double bottom) =>
        Svg.Of(
            "rect",
            ("class", kind),
            ("x", left),
            ("y", top),
            ("width", Math.Max(right - left, 0.5)),
            ("height", Math.Max(bottom - top, 0))
        );

    private static string FillOf(Gait gait) =>
        gait switch
        {
            Gait.Walk => Palette.Limb,
            Gait.Trot => Palette.Accent,
            Gait.Canter => Palette.Soft,
            Gait.Gallop => Palette.Ink,
        };

    private string Say(string text, params ReadOnlySpan<object?> arguments) => string.Format(_options.Culture, text, arguments);

    private static string N(double value) => Svg.Written(value);
}
