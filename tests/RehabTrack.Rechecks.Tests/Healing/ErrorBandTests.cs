using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Healing;

/// <summary>The 95 % bands of single values: 1.96 standard errors either way on the scale on which the measure is compared.</summary>
public sealed class ErrorBandTests
{
    private const double Normal = 1.959963984540054;
    private static readonly MeasurementError Error = new(new MeasurementErrorSettings(), Limb.LeftFore);

    private static Trend TrendOf(params double[][] thicknesses) =>
        Analysed(
            Case(
                thicknesses.Select(
                    (both, visit) =>
                        Exam(
                            60 * visit,
                            Row(18) with
                            {
                                Thickness = new Centimetres(both[0]),
                                OtherLimbThickness = both.Length > 1 ? new Centimetres(both[1]) : null,
                            }
                        )
                )
            )
        ).Trend;

    [Fact]
    public void A_volumes_band_is_as_wide_below_as_above_by_its_logarithm()
    {
        Trend trend = Analysed(Case(Exam(0, SixLevels()), Exam(60, SixLevels(0.7)), Exam(120, SixLevels(0.5)))).Trend;

        Assert.Equal(Measure.LesionVolume, trend.Measure);
        Assert.All(
            trend.Series,
            point =>
            {
                Assert.True(point.Lower95 < point.Value);
                Assert.Equal(point.Value, Math.Sqrt(point.Lower95 * point.Upper95), 10);
            }
        );
    }

    [Fact]
    public void A_lesion_areas_band_is_as_wide_below_as_above_on_its_own_scale()
    {
        Trend trend = Analysed(Case(Exam(0, Row(20, 1.5, 0.6)), Exam(60, Row(20, 1.5, 0.4)), Exam(120, Row(20, 1.5, 0.3)))).Trend;

        Assert.Equal(Measure.LesionArea, trend.Measure);
        WorkingScale scale = Error.LesionAreaScale;
        Assert.All(
            trend.Series,
            point =>
            {
                Assert.True(point.Lower95 < point.Value && point.Lower95 > 0);
                Assert.Equal(
                    scale.ToScale(point.Value) - scale.ToScale(point.Lower95),
                    scale.ToScale(point.Upper95) - scale.ToScale(point.Value),
                    10
                );
            }
        );
    }

    // Two readings have errors that are independent, so their squares add; the sound limb was read three times.
    [Fact]
    public void An_excess_has_the_error_of_both_limbs()
    {
        Trend trend = TrendOf([2.2, 1], [2.0, 1], [1.8, 1]);

        Assert.Equal(Measure.ThicknessExcess, trend.Measure);
        double sound = Error.OfThickness(new Centimetres(1), otherMeasurer: false).Value;
        Assert.All(
            trend.Series,
            point =>
            {
                double own = Error.OfThickness(new Centimetres(1 + point.Value), otherMeasurer: false).Value;
                double half = Normal * Math.Sqrt((own * own) + (sound * sound / 3));
                Assert.Equal(point.Value - half, point.Lower95, 10);
                Assert.Equal(point.Value + half, point.Upper95, 10);
            }
        );
    }

    [Fact]
    public void A_grade_is_sure_to_one_step_and_never_off_its_scale()
    {
        Trend trend = Analysed(
            Case(
                ((int[])[3, 2, 0]).Select(
                    (grade, visit) => Exam(60 * visit, Row(18) with { FibreAlignment = new Grade(GradeScales.FibreAlignment0To3, grade) })
                )
            )
        ).Trend;

        Assert.Equal(Measure.Grades, trend.Measure);
        Assert.Equal([(2.0, 3.0), (1.0, 3.0), (0.0, 1.0)], trend.Series.Select(point => (point.Lower95, point.Upper95)));
    }

    // The rule of a rise above the best lays two values side by side, chosen among all: the factor of any two of an examination and four rechecks.
    [Fact]
    public void What_could_be_told_from_the_best_is_reckoned_with_both_errors_and_the_number_of_looks()
    {
        Trend trend = Analysed(
            Case(
                Exam(0, SixLevels(0.6)),
                Exam(60, SixLevels(0.3)),
                Exam(120, SixLevels(1)),
                Exam(180, SixLevels(0.9)),
                Exam(240, SixLevels(0.9))
            )
        ).Trend;

        Assert.Equal(VerdictReason.RiseAboveBest, trend.Reason);
        double Deviation(int visit) => Math.Log(trend.Series[visit].Upper95 / trend.Series[visit].Value) / Normal;
        double both = Math.Sqrt((Deviation(1) * Deviation(1)) + (Deviation(4) * Deviation(4)));
        Assert.Equal(SlopeFigures.ToPercent(ComparisonFactors.AnyTwo(4) * both), trend.DetectableRisePercent!.Value, 8);
        Assert.Equal(SlopeFigures.ToPercent(-ComparisonFactors.AnyTwo(4) * both), trend.DetectableFallPercent!.Value, 8);
    }

    // For small errors the variance of f(x) is (f'·s)² + (f''²/2 + f'·f''')·s⁴; the derivatives are taken here as differences of the scale.
    [Theory]
    [InlineData(0.0)]
    [InlineData(0.05)]
    [InlineData(0.3)]
    [InlineData(1.2)]
    public void The_spread_on_a_scale_is_that_of_its_derivatives(double size)
    {
        WorkingScale scale = Error.LesionAreaScale;
        const double Step = 1e-3;
        double F(int steps) => scale.ToScale(size + (steps * Step));
        double first = (F(-2) - (8 * F(-1)) + (8 * F(1)) - F(2)) / (12 * Step);
        double second = (F(-1) - (2 * F(0)) + F(1)) / (Step * Step);
        double third = (F(2) - (2 * F(1)) + (2 * F(-1)) - F(-2)) / (2 * Step * Step * Step);
        double error = 0.25 / first;
        double variance = Math.Pow(first * error, 2) + (((second * second / 2) + (first * third)) * Math.Pow(error, 4));

        Assert.Equal(Math.Sqrt(variance), scale.SpreadOf(size, error), 4);
    }

    // Areas of one image: the errors of the lesion and of the ligament both enter their quotient.
    [Fact]
    public void A_share_scatters_by_both_areas_and_a_mean_of_four_tracings_by_half()
    {
        MeasurementErrorSettings settings = new() { LesionAreaCv = 0.12, LigamentAreaCv = 0.05 };

        Assert.Equal(0.13, new MeasurementError(settings, Limb.LeftFore).LesionPercentScale.Cv, 12);
        Assert.Equal(
            Error.OfLigamentArea(Cm2(1.5), Part.Body, otherMeasurer: false).Value / 2,
            Error.OfLigamentArea(Cm2(1.5), Part.Body, otherMeasurer: false, 4).Value,
            12
        );
    }
}
