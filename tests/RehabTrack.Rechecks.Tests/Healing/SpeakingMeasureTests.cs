using RehabTrack.Rechecks.Analysis;
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
    public void A_size_that_three_of_four_have_the_latest_among_them_is_enough() =>
        Assert.Equal(
            Measure.LesionVolume,
            Spoken(
                Exam(0, Thick(SixLevels(2), 1.1)),
                Exam(60, Thick(Diffuse(), 1)),
                Exam(120, Thick(SixLevels(1.2), 1)),
                Exam(180, Thick(SixLevels(0.9), 0.9))
            )
        );

    [Fact]
    public void Fibre_graded_only_once_leaves_the_word_to_echogenicity_graded_throughout()
    {
        Grade Echo(int value) => new(GradeScales.Echogenicity0To3, value);
        Trend trend = Analysed(
            Case(
                Exam(0, Row(18) with { Echogenicity = Echo(3), FibreAlignment = new Grade(GradeScales.FibreAlignment0To3, 3) }),
                Exam(60, Row(18) with { Echogenicity = Echo(2) }),
                Exam(120, Row(18) with { Echogenicity = Echo(1) })
            )
        ).Trend;

        Assert.Equal([3.0, 2, 1], trend.Series.Select(point => point.Value));
    }

    [Fact]
    public void Of_grades_of_two_scales_those_of_the_latest_are_read()
    {
        Trend trend = Analysed(
            Case(
                Exam(0, Row(18) with { Echogenicity = new Grade(GradeScales.Echogenicity0To3, 3) }),
                Exam(60, Row(18) with { Echogenicity = new Grade(GradeScales.Echogenicity0To4, 3) }),
                Exam(120, Row(18) with { Echogenicity = new Grade(GradeScales.Echogenicity0To4, 2) })
            )
        ).Trend;

        Assert.Equal([Start.AddDays(60), Start.AddDays(120)], trend.Series.Select(point => point.Date));
    }

    [Fact]
    public void Thickness_is_read_where_the_lesion_is_though_another_level_is_thicker()
    {
        Reading[] Levels(double thickness) =>
            [
                Row(18, 1.5) with
                {
                    LesionArea = LesionArea.Diffuse,
                    Thickness = new Centimetres(thickness),
                },
                Row(26, 1.5, 0) with
                {
                    Thickness = new Centimetres(2),
                },
            ];
        Trend trend = Analysed(Case(Exam(0, Levels(1.4)), Exam(60, Levels(1.2)), Exam(120, Levels(1.1)))).Trend;

        Assert.Equal(Measure.Thickness, trend.Measure);
        Assert.Equal([1.4, 1.2, 1.1], trend.Series.Select(point => point.Value));
    }

    // The mean decides, among places that three of the trend have: 1.2 of three readings goes before 1.1 of four, and before one of 1.5.
    [Fact]
    public void The_worst_place_has_the_largest_mean_not_the_largest_value_nor_the_most_readings()
    {
        Reading At(double level, double thickness) => Row(level) with { Thickness = new Centimetres(thickness) };
        Trend trend = Analysed(
            Case(
                Exam(0, At(18, 1.1), At(22, 0.9), At(26, 1.5)),
                Exam(60, At(18, 1.1), At(22, 1.35)),
                Exam(120, At(18, 1.1), At(22, 1.35)),
                Exam(180, At(18, 1.1))
            )
        ).Trend;

        Assert.Equal(Measure.Thickness, trend.Measure);
        Assert.Equal([0.9, 1.35, 1.35], trend.Series.Select(point => point.Value));
    }

    // What was measured on the day of the injury was not measured before it.
    [Theory]
    [InlineData(0, Measure.Thickness)]
    [InlineData(1, Measure.ThicknessAboveOwn)]
    public void Only_what_was_measured_before_the_onset_is_the_horses_own_sound_size(int onset, Measure expected)
    {
        Examination[] course =
        [
            .. ((double[])[1, 2.2, 2, 1.8]).Select((size, visit) => Exam(60 * visit, Row(18) with { Thickness = new Centimetres(size) })),
        ];

        Assert.Equal(expected, Analysed(Case(course) with { Onset = Start.AddDays(onset) }).Trend.Measure);
    }

    [Fact]
    public void Where_no_measure_has_enough_the_one_that_most_have_speaks() =>
        Assert.Equal(
            Measure.LesionVolume,
            Spoken(Exam(0, SixLevels(2)), Exam(60, SixLevels(1.6)), Exam(120, Thick(Diffuse(), 1)), Exam(180, Diffuse()))
        );

    [Fact]
    public void A_change_from_nothing_has_no_percent_and_one_point_no_window()
    {
        Trend fromNothing = Analysed(Case(Exam(0, Row(20, 1.5, 0)), Exam(60, Row(20, 1.5, 0.4)), Exam(120, Row(20, 1.5, 0.5)))).Trend;
        Trend single = Analysed(Case(Exam(0, SixLevels()))).Trend;

        Assert.Equal(Measure.LesionArea, fromNothing.Measure);
        Assert.Null(fromNothing.ChangePercent);
        Assert.False(Assert.Single(single.Series).InWindow);
    }

    // Half of .8 is .4 to the last digit.
    [Fact]
    public void The_target_is_reached_by_its_own_value()
    {
        Trend trend = Analysed(
            Case(Exam(0, Row(20, 1.5, 0.8)), Exam(60, Row(20, 1.5, 0.6)), Exam(120, Row(20, 1.5, 0.4))) with
            {
                TargetFraction = 0.5,
            }
        ).Trend;

        Assert.Equal((Verdict.AtTarget, VerdictReason.TargetReached), (trend.Verdict, trend.Reason));
    }

    // Three grades rise by chance once in six orders; a tie is one of three: the limit set to it counts, just below it does not.
    [Theory]
    [InlineData(0.334, Verdict.Worsening)]
    [InlineData(0.332, Verdict.NotYetReadable)]
    public void Grades_that_rise_are_worsening_only_when_chance_would_seldom_do_it(double limit, Verdict expected)
    {
        AnalysisSettings settings = new() { Trend = new TrendSettings { GradesProbability = limit } };
        CaseCourse course = Case(
            ((int[])[1, 1, 2]).Select(
                (grade, visit) => Exam(60 * visit, Row(18) with { FibreAlignment = new Grade(GradeScales.FibreAlignment0To3, grade) })
            )
        );

        Assert.Equal(expected, Analysed(course, settings).Trend.Verdict);
    }

    [Fact]
    public void The_limit_itself_counts_for_grades()
    {
        AnalysisSettings settings = new() { Trend = new TrendSettings { GradesProbability = Kendall.Of([1, 1, 2]).Rise } };
        CaseCourse course = Case(
            ((int[])[1, 1, 2]).Select(
                (grade, visit) => Exam(60 * visit, Row(18) with { FibreAlignment = new Grade(GradeScales.FibreAlignment0To3, grade) })
            )
        );

        Assert.Equal(Verdict.Worsening, Analysed(course, settings).Trend.Verdict);
    }

    // The phase that holds at the latest examination, on its first day too; phases are told in any order, and of two from one day the
    // heavier one holds.
    [Theory]
    [InlineData(120, PlanPhase.Trot)]
    [InlineData(121, PlanPhase.Walk)]
    public void The_rate_asked_for_is_that_of_the_phase_at_the_latest_examination(int trotFrom, PlanPhase expected)
    {
        TrendSettings settings = new() { SlowestAcceptableAtTrotLogPer60Days = -0.08, SlowestAcceptableAtCanterLogPer60Days = -0.05 };
        Trend trend = Analysed(
            Case(Exam(0, SixLevels()), Exam(60, SixLevels(0.9)), Exam(120, SixLevels(0.8))) with
            {
                PlanPhases =
                [
                    new PlanPhaseStart(Start.AddDays(trotFrom), PlanPhase.Trot),
                    new PlanPhaseStart(Start.AddDays(trotFrom), PlanPhase.Walk),
                    new PlanPhaseStart(Start.AddDays(10), PlanPhase.Walk),
                    new PlanPhaseStart(Start, PlanPhase.CanterOrGallop),
                ],
            },
            new AnalysisSettings { Trend = settings }
        ).Trend;

        Assert.Equal(settings.SlowestAcceptableIn(expected), trend.SlowestAcceptableLogPer60Days);
    }

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
