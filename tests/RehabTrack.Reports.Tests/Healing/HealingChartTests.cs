using System.Globalization;
using System.Xml.Linq;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Reports.Healing;
using RehabTrack.Reports.Pictures;
using static RehabTrack.Reports.Tests.AssertPicture;

namespace RehabTrack.Reports.Tests.Healing;

public sealed class HealingChartTests
{
    private static readonly DateOnly Start = new(2026, 1, 12);

    [Theory]
    [InlineData(WidthClass.Desktop)]
    [InlineData(WidthClass.Phone)]
    public void Points_stand_at_their_dates_on_one_even_axis(WidthClass width)
    {
        HealingChartPicture picture = Draw(Stalled(), new HealingOptions { Width = width });
        Assert.Equal(5, picture.Points.Count);
        ChartPoint first = picture.Points[0];
        double perDay = (picture.Points[^1].X - first.X) / (picture.Points[^1].Date.DayNumber - first.Date.DayNumber);
        Assert.True(perDay > 0);
        Assert.All(
            picture.Points,
            point => Assert.Equal(first.X + (perDay * (point.Date.DayNumber - first.Date.DayNumber)), point.X, 1e-6)
        );
        Assert.All(picture.Points, point => Assert.Equal(picture.Axis!.XOf(point.Date), point.X, 1e-9));
    }

    [Fact]
    public void A_value_stands_on_the_scale_that_the_rules_show()
    {
        HealingChartPicture picture = Draw(Stalled(), new HealingOptions());
        XElement[] labels = [.. WithClass(picture.Root, "value")];
        (double Value, double Y)[] rules =
        [
            .. labels.Select(label => (double.Parse(label.Value, CultureInfo.InvariantCulture), Number(label, "y"))),
        ];
        double perUnit = (rules[^1].Y - rules[0].Y) / (rules[^1].Value - rules[0].Value);
        // A rule's figure stands a little below its line: by the same amount for all.
        double below = Number(labels[0], "font-size") * 0.35;
        Assert.All(
            picture.Points.Zip(Stalled().Trend!.Series),
            pair => Assert.Equal(rules[0].Y - below + (perUnit * (pair.Second.Value - rules[0].Value)), pair.First.Y, 0.05)
        );
    }

    [Fact]
    public void The_drawn_dots_stand_where_the_points_are_said_to_be()
    {
        HealingChartPicture picture = Draw(Stalled(), new HealingOptions());
        foreach (ChartPoint point in picture.Points)
        {
            XElement dot = WithClass(PointOf(picture, point.ExaminationId), "dot").Single();
            Assert.Equal((point.X, point.Y), (Number(dot, "cx"), Number(dot, "cy")), new Near(0.01));
        }
    }

    [Fact]
    public void The_band_reaches_from_the_lower_to_the_upper_end_of_every_error()
    {
        HealingChartPicture picture = Draw(Stalled(), new HealingOptions());
        Assert.Equal(4, WithClass(picture.Root, "band").Count());
        Assert.Equal(5, WithClass(picture.Root, "error").Count());
    }

    [Fact]
    public void A_step_inside_the_error_is_dotted_and_named_cannot_tell()
    {
        InventedCase invented = InventedCase.Healing(2);
        invented.Trend = InventedCase.VolumeTrend(
            Verdict.NotYetReadable,
            -0.05,
            (Start, 2.0, true, true),
            (Start.AddDays(60), 1.95, true, true)
        );
        HealingChartPicture picture = Draw(invented, new HealingOptions());
        XElement step = WithClass(picture.Root, "step").Single();
        Assert.Contains("step-inside", step.Attribute("class")!.Value, StringComparison.Ordinal);
        Assert.NotNull(step.Attribute("stroke-dasharray"));
        Assert.Contains("cannot tell", WithClass(picture.Root, "legend").Single().Value, StringComparison.Ordinal);
        Assert.Contains("cannot tell", picture.Table.Rows[1][4], StringComparison.Ordinal);
        Assert.Contains("cannot tell", picture.Points[1].Label, StringComparison.Ordinal);
    }

    [Fact]
    public void A_step_clear_of_the_error_is_a_line_and_gives_its_figure()
    {
        InventedCase invented = InventedCase.Healing(2);
        invented.Trend = InventedCase.VolumeTrend(
            Verdict.NotYetReadable,
            -0.6,
            (Start, 2.0, true, true),
            (Start.AddDays(60), 1.0, true, true)
        );
        HealingChartPicture picture = Draw(invented, new HealingOptions());
        XElement step = WithClass(picture.Root, "step").Single();
        Assert.Contains("step-clear", step.Attribute("class")!.Value, StringComparison.Ordinal);
        Assert.Null(step.Attribute("stroke-dasharray"));
        Assert.Equal("−50\u00a0%", picture.Table.Rows[1][4]);
        Assert.DoesNotContain("cannot tell", WithClass(picture.Root, "legend").Single().Value, StringComparison.Ordinal);
    }

    [Fact]
    public void The_bar_for_a_clear_step_rises_with_every_recheck()
    {
        // √(0.60² + 0.36²) = 0.70 < 0.80 < 0.70 · 2.610 / 1.960 = 0.93: clear once, not clear among six rechecks.
        SeriesPoint[] two = [At(0, 2.0), At(1, 1.2)];
        SeriesPoint[] seven = [At(0, 2.0), At(1, 1.2), At(2, 1.2), At(3, 1.2), At(4, 1.2), At(5, 1.2), At(6, 1.2)];
        Assert.False(PointStep.Of(two)[0].InsideError);
        Assert.True(PointStep.Of(seven)[0].InsideError);

        static SeriesPoint At(int i, double value) =>
            new()
            {
                ExaminationId = InventedCase.IdOf(i),
                Date = Start.AddDays(60 * i),
                Value = value,
                Lower95 = value * 0.7,
                Upper95 = value * 1.3,
                Complete = true,
                InTrend = true,
                InWindow = true,
            };
    }

    [Fact]
    public void An_incomplete_examination_is_an_open_point_and_an_early_one_is_pale()
    {
        InventedCase invented = InventedCase.Healing(3);
        invented.Onset = Start.AddDays(-10);
        invented.Trend = InventedCase.VolumeTrend(
            Verdict.NotYetReadable,
            -0.1,
            (Start, 2.0, true, false),
            (Start.AddDays(60), 2.4, false, true),
            (Start.AddDays(120), 2.0, true, true)
        );
        HealingChartPicture picture = Draw(invented, new HealingOptions());
        Assert.Equal("var(--soft)", WithClass(PointOf(picture, InventedCase.IdOf(0)), "dot").Single().Attribute("fill")!.Value);
        Assert.Equal("var(--sheet)", WithClass(PointOf(picture, InventedCase.IdOf(1)), "dot").Single().Attribute("fill")!.Value);
        Assert.Equal("var(--accent)", WithClass(PointOf(picture, InventedCase.IdOf(2)), "dot").Single().Attribute("fill")!.Value);
        Assert.Contains("not in the trend", picture.Points[0].Label, StringComparison.Ordinal);
        Assert.Contains("lesion level missing or unsure", picture.Points[1].Label, StringComparison.Ordinal);
        XElement weeks = WithClass(picture.Root, "first-weeks").Single();
        double from = Number(weeks, "x");
        Assert.Equal(picture.Axis!.XOf(Start.AddDays(-10)), from, 0.01);
        Assert.Equal(picture.Axis.XOf(Start.AddDays(18)), from + Number(weeks, "width"), 0.01);
    }

    [Theory]
    [InlineData(Verdict.Stalled, "No progress", "var(--amber)", true)]
    [InlineData(Verdict.Worsening, "Worsening", "var(--red)", true)]
    [InlineData(Verdict.Healing, "Healing", "var(--accent)", false)]
    public void The_verdict_stands_over_the_examinations_that_decide_with_its_rate(
        Verdict verdict,
        string words,
        string colour,
        bool marked
    )
    {
        InventedCase invented = Stalled();
        invented.Trend = invented.Trend! with { Verdict = verdict };
        HealingChartPicture picture = Draw(invented, new HealingOptions());
        XElement said = WithClass(picture.Root, "verdict").Single();
        Assert.StartsWith(words, said.Value, StringComparison.Ordinal);
        Assert.Equal(colour, said.Attribute("fill")!.Value);
        Assert.Equal(marked, WithClass(picture.Root, "mark").Any());
        // exp(−0.03) − 1 = −3 %; exp(−0.16) − 1 = −15 %; exp(0.10) − 1 = +11 %.
        Assert.Equal(
            "−3 % per 60 days (−15 % to +11 %)",
            WithClass(picture.Root, "rate").Single().Value.Replace('\u00a0', ' ').Replace("  ", " ", StringComparison.Ordinal)
        );
        string path = WithClass(picture.Root, "window").Single().Attribute("d")!.Value;
        Assert.StartsWith("M" + Svg.Written(picture.Points[2].X) + " ", path, StringComparison.Ordinal);
        Assert.Contains("H" + Svg.Written(picture.Points[4].X), path, StringComparison.Ordinal);
    }

    [Fact]
    public void The_slowest_acceptable_course_starts_with_the_fitted_one_and_falls_by_its_rate()
    {
        InventedCase invented = Stalled();
        DecidingTrend deciding = DecidingTrend.Of(invented.Trend!, Measure.LesionVolume)!;
        DateOnly from = invented.Trend!.Window!.From;
        Assert.Equal(deciding.FitAt(from), deciding.SlowestAt(from), 12);
        Assert.Equal(Math.Exp(-0.15), deciding.SlowestAt(from.AddDays(60)) / deciding.SlowestAt(from), 12);
        Assert.Equal(Math.Exp(-0.03), deciding.FitAt(from.AddDays(60)) / deciding.FitAt(from), 12);
    }

    [Fact]
    public void The_target_is_the_vets_share_of_the_first_value_in_the_trend()
    {
        HealingChartPicture picture = Draw(Stalled(), new HealingOptions());
        // 10 % of 2.02 cm³.
        Assert.Contains("target 0.20\u00a0cm³", picture.Svg, StringComparison.Ordinal);
        Assert.Single(WithClass(picture.Root, "target"));
    }

    [Fact]
    public void A_thickness_has_neither_target_nor_slowest_rate_and_no_zero()
    {
        InventedCase invented = Stalled();
        invented.Trend = invented.Trend! with { Measure = Measure.Thickness };
        HealingChartPicture picture = Draw(invented, new HealingOptions());
        Assert.Empty(WithClass(picture.Root, "target"));
        Assert.Empty(WithClass(picture.Root, "slowest"));
        Assert.DoesNotContain(WithClass(picture.Root, "value"), label => label.Value is "0" or "0.0");
    }

    [Theory]
    [InlineData(1, WidthClass.Desktop)]
    [InlineData(2, WidthClass.Phone)]
    [InlineData(12, WidthClass.Desktop)]
    [InlineData(12, WidthClass.Phone)]
    public void A_picture_stays_inside_its_frame_and_takes_every_colour_from_the_page(int examinations, WidthClass width)
    {
        InventedCase invented = InventedCase.Healing(examinations);
        invented.Onset = Start.AddDays(-30);
        invented.Trend = InventedCase.VolumeTrend(
            Verdict.Stalled,
            -0.05,
            [.. Enumerable.Range(0, examinations).Select(i => (Start.AddDays(58 * i), 2.5 * Math.Exp(-0.2 * i), i % 4 != 3, true))]
        );
        HealingChartPicture picture = Draw(invented, new HealingOptions { Width = width, SelectedExaminations = [InventedCase.IdOf(0)] });
        IsWellFormed(picture);
        StaysInside(picture);
        TakesEveryColourFromThePage(picture);
        Assert.Equal(examinations, WithClass(picture.Root, "point").Count());
    }

    [Fact]
    public void A_phone_writes_at_most_four_dates_and_always_the_first_and_the_last()
    {
        InventedCase invented = InventedCase.Healing(12);
        invented.Trend = InventedCase.VolumeTrend(
            Verdict.Healing,
            -0.2,
            [.. Enumerable.Range(0, 12).Select(i => (Start.AddDays(58 * i), 2.5 * Math.Exp(-0.2 * i), true, true))]
        );
        string[] dates =
        [
            .. WithClass(Draw(invented, new HealingOptions { Width = WidthClass.Phone }).Root, "date").Select(date => date.Value),
        ];
        Assert.InRange(dates.Length, 2, 4);
        Assert.Equal("12\u00a0Jan", dates[0]);
        Assert.Equal("12\u00a0Oct", dates[^1]);
    }

    [Fact]
    public void Written_dates_never_touch()
    {
        InventedCase invented = InventedCase.Healing(6);
        invented.Trend = InventedCase.VolumeTrend(
            Verdict.Healing,
            -0.2,
            [.. new[] { 0, 3, 6, 200, 203, 400 }.Select(day => (Start.AddDays(day), 2.0, true, true))]
        );
        (double From, double To)[] dates =
        [
            .. WithClass(Draw(invented, new HealingOptions()).Root, "date")
                .Select(date => (Number(date, "x"), Svg.WidthOf(date.Value, Number(date, "font-size")) / 2))
                .Select(date => (date.Item1 - date.Item2, date.Item1 + date.Item2))
                .OrderBy(date => date.Item1),
        ];
        Assert.All(dates.Zip(dates.Skip(1)), pair => Assert.True(pair.First.To < pair.Second.From));
    }

    [Theory]
    [InlineData(WidthClass.Desktop)]
    [InlineData(WidthClass.Phone)]
    public void An_examination_soon_after_an_injection_is_framed_and_says_so_and_no_other_is(WidthClass width)
    {
        string marked = InventedCase.IdOf(2);
        HealingChartPicture picture = Draw(
            Stalled(),
            new HealingOptions
            {
                Width = width,
                DaysAfterInjection = new Dictionary<string, int> { [marked] = 12 },
            }
        );

        ChartPoint framed = Assert.Single(
            picture.Points,
            point => WithClass(PointOf(picture, point.ExaminationId), "after-injection").Any()
        );
        Assert.Equal(marked, framed.ExaminationId);
        Assert.Contains("12 days after an injection into the lesion", framed.Label, StringComparison.Ordinal);
        XElement frame = WithClass(PointOf(picture, marked), "after-injection").Single();
        Assert.Equal((framed.X, framed.Y), (Number(frame, "x") + 10, Number(frame, "y") + 10), new Near(0.01));
        Assert.Contains("soon after an injection", WithClass(picture.Root, "legend").Single().Value, StringComparison.Ordinal);
        Assert.DoesNotContain(
            "soon after an injection",
            WithClass(Draw(Stalled(), new HealingOptions { Width = width }).Root, "legend").Single().Value,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Without_a_measure_the_picture_says_what_would_make_one()
    {
        HealingChartPicture picture = Draw(InventedCase.Healing(1), new HealingOptions());
        IsWellFormed(picture);
        TakesEveryColourFromThePage(picture);
        Assert.Equal("No measure to draw yet", picture.Title);
        Assert.Contains("first point", picture.Svg, StringComparison.Ordinal);
        Assert.Empty(picture.Points);
        Assert.Null(picture.Axis);
    }

    [Fact]
    public void The_table_has_the_value_its_error_and_what_it_counts_for()
    {
        DrawingTable table = Draw(Stalled(), new HealingOptions()).Table;
        Assert.Equal("Lesion volume, cm³", table.Columns[1].Heading);
        Assert.Equal(["12\u00a0Jan\u00a02026", "2.02", "1.70", "2.40", "–", "yes", "in the trend"], table.Rows[0]);
        Assert.Equal(("no", "for the verdict"), (table.Rows[2][5], table.Rows[2][6]));
    }

    [Fact]
    public void A_point_says_its_numbers_in_words_and_can_be_pressed()
    {
        HealingChartPicture picture = Draw(Stalled(), new HealingOptions { SelectedExaminations = [InventedCase.IdOf(4)] });
        XElement point = PointOf(picture, InventedCase.IdOf(0));
        Assert.Equal(
            "12 Jan 2026: lesion volume 2.02 cm³, measurement error 1.70 to 2.40 cm³, in the trend",
            point.Attribute("aria-label")!.Value.Replace('\u00a0', ' ')
        );
        Assert.Equal(("button", "0"), (point.Attribute("role")!.Value, point.Attribute("tabindex")!.Value));
        Assert.Equal("true", PointOf(picture, InventedCase.IdOf(4)).Attribute("aria-pressed")!.Value);
    }

    private static InventedCase Stalled()
    {
        InventedCase invented = InventedCase.Healing();
        invented.Trend = InventedCase.VolumeTrend(
            Verdict.Stalled,
            -0.03,
            (Start, 2.02, true, true),
            (Start.AddDays(57), 1.55, true, true),
            (Start.AddDays(121), 1.33, false, true),
            (Start.AddDays(178), 1.19, true, true),
            (Start.AddDays(239), 1.21, true, true)
        );
        return invented;
    }

    private static HealingChartPicture Draw(InventedCase invented, HealingOptions options)
    {
        (CaseCourse course, CaseAnalysis analysis) = invented.Build();
        return HealingChart.Draw(course, analysis, options);
    }

    private static XElement PointOf(HealingChartPicture picture, string examination) =>
        WithClass(picture.Root, "point").Single(point => point.Attribute("data-examination")!.Value == examination);

    private sealed class Near(double by) : IEqualityComparer<(double, double)>
    {
        public bool Equals((double, double) x, (double, double) y) =>
            Math.Abs(x.Item1 - y.Item1) <= by && Math.Abs(x.Item2 - y.Item2) <= by;

        public int GetHashCode((double, double) obj) => 0;
    }
}
