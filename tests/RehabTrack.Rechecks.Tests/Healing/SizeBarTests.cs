using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Rechecks.Tests.Healing;

public sealed class SizeBarTests
{
    private static readonly DateOnly Start = new(2026, 1, 5);

    private static SeriesPoint Point(int day, double value, double error, bool complete = true) =>
        new()
        {
            ExaminationId = $"e{day}",
            Date = Start.AddDays(day),
            Value = value,
            Lower95 = Math.Max(0, value - error),
            Upper95 = value + error,
            Complete = complete,
            InTrend = true,
            InWindow = true,
        };

    private static Trend Trend(Measure? measure, params SeriesPoint[] series) =>
        new()
        {
            Verdict = Verdict.NotYetReadable,
            Reason = VerdictReason.TwoWithinError,
            Measure = measure,
            Series = series,
            Window = null,
            Course = null,
            ChangePercent = null,
            DetectableRisePercent = null,
            DetectableFallPercent = null,
            SlowestAcceptableLogPer60Days = -0.15,
            MoreExaminationsToSettle = null,
            Projection = null,
            Since = null,
        };

    [Fact]
    public void Each_bar_is_a_share_of_the_largest_and_says_whether_it_can_be_told_from_the_one_before()
    {
        IReadOnlyList<SizeBar> bars = SizeBar.Of(Trend(Measure.LesionVolume, Point(0, 2, 0.1), Point(60, 1, 0.1), Point(120, 0.95, 0.1)));

        Assert.Equal([new(Start, 1, false), new(Start.AddDays(60), 0.5, false), new(Start.AddDays(120), 0.475, true)], bars);
    }

    [Fact]
    public void An_examination_that_left_out_a_lesion_level_has_no_bar() =>
        Assert.Equal(
            [Start, Start.AddDays(120)],
            SizeBar
                .Of(Trend(Measure.LesionArea, Point(0, 2, 0.1), Point(60, 0.2, 0.1, complete: false), Point(120, 1, 0.1)))
                .Select(bar => bar.Date)
        );

    [Theory]
    [InlineData(Measure.Thickness)]
    [InlineData(Measure.Grades)]
    [InlineData(null)]
    public void What_is_no_size_of_the_lesion_has_no_bars(Measure? measure) =>
        Assert.Empty(SizeBar.Of(Trend(measure, Point(0, 2, 0.1), Point(60, 1, 0.1))));

    [Fact]
    public void One_examination_and_a_course_without_a_lesion_have_no_bars()
    {
        Assert.Empty(SizeBar.Of(Trend(Measure.LesionArea, Point(0, 2, 0.1))));
        Assert.Empty(SizeBar.Of(Trend(Measure.LesionArea, Point(0, 0, 0.1), Point(60, 0, 0.1))));
    }
}
