using System.Globalization;
using System.Xml.Linq;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Reports.Healing;
using RehabTrack.Reports.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Plans;

/// <summary>
/// A plan week by week: minutes of a day stacked by gait, the slowest at the bottom, over weeks of effective time. What waits behind a
/// gate is drawn in outline; a row that is not filled is a frame that says so.
/// </summary>
public sealed class PlanDrawing
{
    private const int MostLabels = 14;
    private readonly PlanVersion _plan;
    private readonly PlanOptions _options;
    private readonly IReadOnlyList<PlanWeek> _weeks;
    private readonly double _width;
    private readonly double _size;
    private readonly int _days;
    private readonly int _gates;
    private readonly bool[] _filled;

    private PlanDrawing(PlanVersion plan, PlanOptions options)
    {
        _plan = plan;
        _options = options;
        _weeks = PlanPreview.From(plan, options.Start);
        _width = options.Width == WidthClass.Phone ? 360 : 1000;
        _size = options.Width == WidthClass.Phone ? 14 : 13;
        _days = _weeks.Count == 0 ? 0 : _weeks[^1].FirstDay + _weeks[^1].Days;
        _gates = _weeks.Count == 0 ? 0 : _weeks[^1].Gates;
        _filled = [.. plan.Steps.Select(PlanRows.IsFilled)];
    }

    /// <summary>Draws the weeks.</summary>
    /// <param name="plan">The plan, as signed or as it is being written.</param>
    /// <param name="options">How it is drawn; the plan must have the step at which the drawing starts.</param>
    public static Picture Draw(PlanVersion plan, PlanOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        return new PlanDrawing(plan, options).Draw();
    }

    private CultureInfo Culture => _options.Culture;

    private bool IsPhone => _options.Width == WidthClass.Phone;

    private Picture Draw()
    {
        int most = _weeks.Max(week => week.Work.Day.Total);
        double top = (2 * _size) + 20;
        double bottom = top + (IsPhone ? 170 : 200);
        ValueAxis up = ValueAxis.Holding(0, Math.Max(most, 10), true, top, bottom, 4);
        double left = 4 + up.Ticks.Max(tick => Svg.WidthOf(Number(tick), _size)) + 8;
        double right = _width - 10;
        double Across(double day) => left + ((right - left) * day / Math.Max(1, _days));

        string description = Describe(most);
        XElement scenery = Svg.Of("g", ("aria-hidden", "true"));
        scenery.Add(Svg.Text(4, _size + 2, Drawings.PlanUp, _size, Palette.Soft));
        foreach (double tick in up.Ticks)
        {
            scenery.Add(
                Svg.Line(left, up.YOf(tick), right, up.YOf(tick), tick == 0 ? Palette.Soft : Palette.Line, 1),
                Svg.Text(left - 6, up.YOf(tick) + (_size * 0.35), Number(tick), _size, Palette.Soft, "end")
            );
        }

        foreach (PlanWeek week in _weeks)
        {
            Bar(scenery, week, up, Across(week.FirstDay), Across(week.FirstDay + week.Days));
        }

        Unfilled(scenery, Across, bottom);
        Gates(scenery, Across, top, bottom);
        Today(scenery, Across, left, top, bottom);
        double below = Axis(scenery, Across, bottom, left, right);
        (XElement legend, double height) = Legend(below);
        XElement root = Svg.Root(_width, height, false, Drawings.PlanTitle, description, _options.IdPrefix);
        root.Add(scenery);
        root.Add(legend);
        return new Picture
        {
            Root = root,
            Width = _width,
            Height = height,
            Title = Drawings.PlanTitle,
            Description = description,
            Table = Table(),
        };
    }

    private string Describe(int most)
    {
        int steps = _plan.Steps.Count - _options.Start.Step;
        int weeks = (_days + PlanRows.DaysOfWeek - 1) / PlanRows.DaysOfWeek;
        int first = _weeks.First(week => week.Work.Day.Total == most).FirstDay / PlanRows.DaysOfWeek;
        return Say(
            Drawings.PlanDescription,
            steps == 1 ? Drawings.PlanOneStep : Say(Drawings.PlanSteps, steps),
            weeks == 1 ? Drawings.PlanOneWeek : Say(Drawings.PlanWeeks, weeks),
            most,
            first + 1,
            _gates switch
            {
                0 => Drawings.PlanNoGate,
                1 => Drawings.PlanOneGate,
                _ => Say(Drawings.PlanGates, _gates),
            }
        );
    }

    private void Bar(XElement scenery, PlanWeek week, ValueAxis up, double from, double to)
    {
        bool waits = week.Gates > 0;
        double gap = Math.Min(1.5, (to - from) * 0.15);
        int below = 0;
        foreach (Gait gait in PlanRows.Gaits)
        {
            int minutes = week.Work.Day.Of(gait);
            if (minutes > 0)
            {
                double y = up.YOf(below + minutes);
                scenery.Add(
                    Patch(gait, waits, from + gap, y, to - from - (2 * gap), up.YOf(below) - y)
                        .With(("class", waits ? "week waits" : "week"), ("data-gait", gait.ToString().ToLowerInvariant()))
                );
                below += minutes;
            }
        }
    }

    /// <summary>The slower, the lighter; a lighter line keeps the gaits of a stack apart.</summary>
    private static XElement Patch(Gait gait, bool waits, double x, double y, double width, double height)
    {
        (string fill, double opacity) = gait switch
        {
            Gait.Walk => (Palette.Limb, 1),
            Gait.Trot => (Palette.Accent, 0.55),
            Gait.Canter => (Palette.Accent, 1),
            Gait.Gallop => (Palette.Ink, 1),
        };
        return Svg.Of(
            "rect",
            ("x", x),
            ("y", y),
            ("width", width),
            ("height", height),
            ("fill", fill),
            ("fill-opacity", waits ? opacity * 0.3 : opacity),
            ("stroke", waits ? Palette.Soft : Palette.Sheet),
            ("stroke-width", waits ? 0.8 : 1),
            ("stroke-dasharray", waits ? "3 2" : null)
        );
    }

    private void Unfilled(XElement scenery, Func<double, double> across, double bottom)
    {
        foreach (IGrouping<int, PlanWeek> step in _weeks.Where(week => !_filled[week.Place.Step]).GroupBy(week => week.Place.Step))
        {
            double from = across(step.First().FirstDay) + 1.5;
            double to = across(step.Last().FirstDay + step.Last().Days) - 1.5;
            double height = _size + 12;
            scenery.Add(
                Svg.Of(
                    "rect",
                    ("class", "unfilled"),
                    ("x", from),
                    ("y", bottom - height),
                    ("width", Math.Max(1, to - from)),
                    ("height", height),
                    ("fill", Palette.Sheet),
                    ("stroke", Palette.Amber),
                    ("stroke-width", 1.4),
                    ("stroke-dasharray", "5 3")
                )
            );
            if (Svg.WidthOf(Drawings.PlanUnfilled, _size) + 26 <= to - from)
            {
                double middle = (from + to) / 2;
                double text = Svg.WidthOf(Drawings.PlanUnfilled, _size);
                scenery.Add(
                    Triangle(middle - (text / 2) - 8, bottom - (height / 2)),
                    Svg.Text(middle + 6, bottom - (height / 2) + (_size * 0.35), Drawings.PlanUnfilled, _size, Palette.Amber, "middle")
                );
            }
            else if (to - from >= 12)
            {
                scenery.Add(Triangle((from + to) / 2, bottom - (height / 2)));
            }
        }
    }

    private static XElement Triangle(double x, double y) =>
        Svg.Of("path", ("d", $"M{N(x)} {N(y - 5)}L{N(x + 5.5)} {N(y + 5)}H{N(x - 5.5)}Z"), ("fill", Palette.Amber));

    private void Gates(XElement scenery, Func<double, double> across, double top, double bottom)
    {
        double free = double.MinValue;
        for (int i = 1; i < _weeks.Count; i++)
        {
            if (_weeks[i].Gates == _weeks[i - 1].Gates)
            {
                continue;
            }

            double x = across(_weeks[i].FirstDay);
            scenery.Add(
                Svg.Line(x, top - 8, x, bottom, Palette.Ink, 1.4).With(("class", "gate")),
                Svg.Of("path", ("d", $"M{N(x)} {N(top - 14)}l5 6l-5 6l-5 -6Z"), ("fill", Palette.Ink))
            );
            double half = Svg.WidthOf(Drawings.PlanGate, _size) / 2;
            double middle = Math.Clamp(x, half + 2, _width - half - 2);
            if (middle - half > free + 8)
            {
                scenery.Add(Svg.Text(middle, top - 18, Drawings.PlanGate, _size, Palette.Ink, "middle", 600));
                free = middle + half;
            }
        }
    }

    private void Today(XElement scenery, Func<double, double> across, double left, double top, double bottom)
    {
        if (_options.Today is not { } place || _weeks.LastOrDefault(week => week.Place <= place) is not { } week)
        {
            return;
        }

        double x = across(week.FirstDay + Math.Min(week.Days - 1, place.Days - week.Place.Days) + 0.5);
        double half = Svg.WidthOf(Drawings.PlanToday, _size) / 2;
        double middle = Math.Clamp(x, left + half + 2, _width - half - 2);
        scenery.Add(
            Svg.Line(x, top + _size - 2, x, bottom, Palette.Accent, 2, "1 3").With(("class", "today"), ("stroke-linecap", "round")),
            Svg.Text(middle, top + _size - 6, Drawings.PlanToday, _size, Palette.Accent, "middle", 600, halo: true)
        );
    }

    private double Axis(XElement scenery, Func<double, double> across, double bottom, double left, double right)
    {
        int weeks = (_days + PlanRows.DaysOfWeek - 1) / PlanRows.DaysOfWeek;
        int every = new[] { 1, 2, 4, 8, 13 }.FirstOrDefault(step => weeks / step <= (IsPhone ? MostLabels / 2 : MostLabels), 26);
        double y = bottom + _size + 6;
        double word = left + Svg.WidthOf(Drawings.PlanAlong + " 1", _size) + 6;
        for (int week = 0; week < weeks; week += every)
        {
            double x = across(week * PlanRows.DaysOfWeek);
            if (week == 0)
            {
                scenery.Add(Svg.Text(x, y, $"{Drawings.PlanAlong} 1", _size, Palette.Soft));
            }
            else if (x > word && x + Svg.WidthOf(Number(week + 1), _size) <= right)
            {
                scenery.Add(Svg.Line(x, bottom, x, bottom + 4, Palette.Soft, 1), Svg.Text(x + 2, y, Number(week + 1), _size, Palette.Soft));
            }
        }

        // Which step the weeks belong to.
        double row = y + 8;
        foreach (IGrouping<int, PlanWeek> step in _weeks.GroupBy(week => week.Place.Step))
        {
            double from = across(step.First().FirstDay) + 1;
            double to = across(step.Last().FirstDay + step.Last().Days) - 1;
            string number = Number(step.Key + 1);
            string named = Say(Drawings.PlanNumberedStep, number, _plan.Steps[step.Key].Name);
            string plain = Say(Drawings.PlanStep, number);
            string? said = new[] { named, plain, number }.FirstOrDefault(text => Svg.WidthOf(text, _size) + 4 <= to - from);
            scenery.Add(Svg.Of("path", ("d", $"M{N(from)} {N(row)}v4H{N(to)}v-4"), ("fill", "none"), ("stroke", Palette.Soft)));
            if (said is not null)
            {
                scenery.Add(Svg.Text((from + to) / 2, row + _size + 8, said, _size, Palette.Ink, "middle"));
            }
        }

        return row + _size + 14;
    }

    private (XElement Legend, double Height) Legend(double top)
    {
        XElement legend = Svg.Of("g", ("class", "legend"), ("aria-hidden", "true"));
        LegendRow row = new(_width, _size, 20, top + 8);
        void Entry(XElement mark, string word)
        {
            (double x, double y) = row.Next(word);
            mark.SetAttributeValue("transform", $"translate({N(x)} {N(y)})");
            legend.Add(mark, Svg.Text(x + 20, y + (_size * 0.85), word, _size, Palette.Ink));
        }

        foreach (Gait gait in PlanRows.Gaits.Where(gait => _weeks.Any(week => week.Work.Day.Of(gait) > 0)))
        {
            Entry(Patch(gait, false, 0, 1, 14, _size - 2), Names.Of(gait, Culture));
        }

        if (_weeks.Any(week => week.Gates > 0 && week.Work.Day.Total > 0))
        {
            Entry(Patch(Gait.Walk, true, 0, 1, 14, _size - 2), Drawings.PlanLegendBehind);
        }

        if (_weeks.Any(week => !_filled[week.Place.Step]))
        {
            Entry(Svg.Of("g").Containing(Triangle(7, _size / 2)), Drawings.PlanLegendUnfilled);
        }

        return (legend, row.IsEmpty ? top + 4 : row.Y + _size + 8);
    }

    private DrawingTable Table() =>
        new(
            Drawings.PlanCaption,
            [
                new(Drawings.PlanColumnWeeks, false),
                new(Drawings.PlanColumnStep, false),
                .. PlanRows.Gaits.Select(gait => new DrawingColumn(Names.AsTitle(Names.Of(gait, Culture), Culture), true)),
                new(Drawings.PlanColumnOutings, true),
                new(Drawings.PlanColumnDays, true),
                new(Drawings.PlanColumnRemark, false),
            ],
            [.. Runs().Select(Row)]
        );

    /// <summary>Weeks of one step that permit the same stand in one row.</summary>
    private List<List<PlanWeek>> Runs()
    {
        List<List<PlanWeek>> runs = [];
        foreach (PlanWeek week in _weeks)
        {
            if (runs.Count > 0 && runs[^1][^1] is var last && last.Place.Step == week.Place.Step && last.Work == week.Work)
            {
                runs[^1].Add(week);
            }
            else
            {
                runs.Add([week]);
            }
        }

        return runs;
    }

    private IReadOnlyList<string> Row(IReadOnlyList<PlanWeek> run)
    {
        string first = Number((run[0].FirstDay / PlanRows.DaysOfWeek) + 1);
        string last = Number(((run[^1].FirstDay + run[^1].Days - 1) / PlanRows.DaysOfWeek) + 1);
        Work work = run[0].Work;
        return
        [
            first == last ? first : Say(Drawings.PlanFromTo, first, last),
            Say(Drawings.PlanNumberedStep, Number(run[0].Place.Step + 1), _plan.Steps[run[0].Place.Step].Name),
            .. PlanRows.Gaits.Select(gait => Number(work.Day.Of(gait))),
            Number(work.OutingsADay),
            Number(work.DaysAWeek),
            !_filled[run[0].Place.Step] && !work.HasOuting ? Drawings.PlanLegendUnfilled
            : run[0].Gates == 1 ? Drawings.PlanBehindOne
            : run[0].Gates > 1 ? Say(Drawings.PlanBehind, run[0].Gates)
            : "",
        ];
    }

    private string Number(double value) => Figures.Number(value, "0", Culture);

    private static string N(double value) => Svg.Written(value);

    private string Say(string text, params ReadOnlySpan<object?> arguments) => string.Format(Culture, text, arguments);
}
