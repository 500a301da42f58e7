using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Healing;

/// <summary>Which measure speaks when examinations measured differently, and against which change it is held.</summary>
public sealed class SpeakingMeasureTests
{
    private const double Normal975 = 1.959963984540054;

    private static IEnumerable<Reading> Thick(IEnumerable<Reading> readings, double thickness) =>
        readings.Select(reading => reading with { Thickness = new Centimetres(thickness) });

    private static IEnumerable<Reading> Graded(IEnumerable<Reading> readings, int fibre) =>
        readings.Select(reading => reading with { FibreAlignment = new Grade(GradeScales.FibreAlignment0To3, fibre) });

    /// <summary>The ligament with a lesion that cannot be outlined: no area of it is known.</summary>
    private static IEnumerable<Reading> Diffuse() => SixLevels().Select(reading => reading with { LesionArea = LesionArea.Diffuse });

    private static Measure? Spoken(params Examination[] examinations) => Analysed(Case(examinations)).Trend.Measure;

    [Fact]
    public void A_measure_that_the_latest_examination_has_goes_before_a_better_one_that_it_lacks() =>
        Assert.Equal(
            Measure.Thickness,
            Spoken(
                Exam(0, Thick(SixLevels(2), 1.1)),
                Exam(60, Thick(SixLevels(1.6), 1)),
                Exam(120, Thick(SixLevels(1.2), 1)),
                Exam(180, Thick(Diffuse(), 0.9))
            )
        );

    [Fact]
    public void Where_the_latest_lacks_every_size_the_best_that_three_have_speaks() =>
        Assert.Equal(
            Measure.LesionVolume,
            Spoken(Exam(0, SixLevels(2)), Exam(60, SixLevels(1.6)), Exam(120, SixLevels(1.2)), Exam(180, Diffuse()))
        );

    [Fact]
    public void A_size_goes_before_grades_though_the_latest_has_grades_alone() =>
        Assert.Equal(
            Measure.LesionVolume,
            Spoken(
                Exam(0, Graded(SixLevels(2), 3)),
                Exam(60, Graded(SixLevels(1.6), 2)),
                Exam(120, Graded(SixLevels(1.2), 2)),
                Exam(180, Graded(Diffuse(), 1))
            )
        );

    [Fact]
    public void Grades_that_three_have_go_before_a_size_that_two_have() =>
        Assert.Equal(
            Measure.Grades,
            Spoken(Exam(0, Graded(SixLevels(2), 3)), Exam(60, Graded(SixLevels(1.6), 2)), Exam(120, Graded(Diffuse(), 1)))
        );

    [Fact]
    public void Where_no_measure_has_enough_the_one_that_most_have_speaks() =>
        Assert.Equal(
            Measure.LesionVolume,
            Spoken(Exam(0, SixLevels(2)), Exam(60, SixLevels(1.6)), Exam(120, Thick(Diffuse(), 1)), Exam(180, Diffuse()))
        );

    [Theory]
    [InlineData(3, 2.2121)]
    [InlineData(4, 2.5690)]
    public void The_detectable_change_is_that_of_the_first_and_last_of_the_window_and_of_how_often_one_looked(int count, double factor)
    {
        // Dunnett's factor while the window begins at the baseline, Tukey's beyond; from memory of the table in docs/methods/healing.md.
        Trend trend = Analysed(Case(Enumerable.Range(0, count).Select(look => Exam(60 * look, SixLevels(2 - (0.05 * look)))))).Trend;
        SeriesPoint first = trend.Series[^3];
        SeriesPoint last = trend.Series[^1];
        double Sd(SeriesPoint point) => Math.Log(point.Upper95 / point.Value) / Normal975;
        double detectable = factor * Math.Sqrt((Sd(first) * Sd(first)) + (Sd(last) * Sd(last)));

        Assert.Equal(100 * (Math.Exp(detectable) - 1), trend.DetectableRisePercent!.Value, 0.05);
        Assert.Equal(100 * (Math.Exp(-detectable) - 1), trend.DetectableFallPercent!.Value, 0.05);
        Assert.Equal(100 * ((last.Value / first.Value) - 1), trend.ChangePercent!.Value, 6);
        Assert.Equal(first.Date, trend.Since);
        Assert.Equal([.. Enumerable.Repeat(false, count - 3), true, true, true], trend.Series.Select(point => point.InWindow));
    }
}
