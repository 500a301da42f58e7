using MathNet.Numerics.Distributions;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Healing;

/// <summary>
/// Numbers that the project's methods name in passing, each reckoned here or asked of the engine. Numbers of what is not built have no
/// check: areas of outlines traced in an image (shoelace; an ellipse of 100 × 80 pixels), a Theil-Sen slope with its interval. Fieller's
/// interval stands, as a baseline, in LogLinearInversionTests.
/// </summary>
public sealed class WorkedNumbersTests
{
    private static readonly TrendSettings Trend = new();

    // Dunnett 1955, JASA 50:1096 (from memory). R 4.2.2: 1 - integrate(function(z) dnorm(z) * (pnorm(z + c) - pnorm(z - c))^5, -9, 9)$value
    // with c <- qnorm(.975) * sqrt(2).
    [Fact]
    public void Five_rechecks_of_a_lesion_that_does_not_change_show_a_change_eighteen_times_in_a_hundred() =>
        Assert.Equal(0.1828486, Looks.WithBaseline(5).Probability(1.959963984540054), 1e-6);

    // Arithmetic: with equal errors the slope of three examinations is their last less their first, so five windows over seven
    // examinations are two chains of differences that know nothing of each other: 1, 3, 5, 7 and 2, 4, 6.
    [Theory]
    [InlineData(1.645, 0.2330)]
    [InlineData(2.326, 0.0498)]
    public void A_lesion_that_does_not_change_is_called_healing_once_in_five_windows_this_often(double line, double expected)
    {
        Assert.Equal(expected, 1 - (NoneFalls(3, line) * NoneFalls(2, line)), 0.0005);
        Assert.Equal(2.326, Trend.HealingZ);
    }

    /// <summary>The chance that no step of a chain of independent values falls by the line or more, by a plain sum over a grid.</summary>
    private static double NoneFalls(int steps, double line)
    {
        const double step = 0.01;
        const int half = 800;
        double[] normal = [.. Enumerable.Range(-half, (2 * half) + 1).Select(i => Normal.PDF(0, 1, i * step))];
        double[] density = [.. normal];
        int reach = (int)(line * Math.Sqrt(2) / step);
        for (int k = 0; k < steps; k++)
        {
            double[] below = [.. density];
            for (int i = 1; i < below.Length; i++)
            {
                below[i] += below[i - 1];
            }

            density = [.. normal.Select((p, i) => p * step * below[Math.Min(i + reach, below.Length - 1)])];
        }

        return density.Sum() * step;
    }

    // Arithmetic: residuals of just their known size leave both variances as they are, so the two intervals are as the quantiles of t:
    // R 4.2.2: qt(.975, 1)/qt(.975, 7) = 5.37345615381.
    [Fact]
    public void The_ordinary_interval_of_three_points_is_five_times_wider_than_the_moderated_one()
    {
        // Points 0, d, 0 lie d/3, 2d/3 and d/3 off their line: residuals whose squares sum to 2d²/3 = sd².
        const double deviation = 0.1;
        double middle = deviation * Math.Sqrt(1.5);
        WeightedLine line = WeightedLine.Through([0, 60, 120], [0, middle, 0], [deviation, deviation, deviation]);
        Assert.Equal(1, line.ResidualSum, 12);
        (double lower, double upper) = line.ModeratedInterval(Trend.PriorDegreesOfFreedom);
        double ordinary =
            2 * StudentT.InvCDF(0, 1, 1, 0.975) * line.SlopeStandardError * Math.Sqrt(line.ResidualSum / line.DegreesOfFreedom);
        Assert.Equal(5.37345615381, ordinary / (upper - lower), 9);
    }

    // Arithmetic: 100·(e^−.15 − 1) = −13.929.
    [Fact]
    public void The_slowest_acceptable_rate_is_a_loss_of_fourteen_percent_in_sixty_days()
    {
        SlopeFigures slope = new()
        {
            LogPer60Days = Trend.SlowestAcceptableLogPer60Days,
            StandardError = 0,
            Lower95Log = 0,
            Upper95Log = 0,
            Examinations = 3,
            From = Start,
            To = Start,
        };
        Assert.Equal(-13.929, slope.RatePercent, 0.0005);
    }

    // Common practice, no source: a rise above the best of at most .05 cm², .1 cm³ or .1 cm alone is no worsening, however sure it is.
    [Theory]
    [InlineData(0.049, false)]
    [InlineData(0.051, true)]
    public void A_rise_of_an_area_has_to_pass_a_twentieth_of_a_square_centimetre(double rise, bool isWorsening) =>
        Assert.Equal(isWorsening, IsWorsening(Measure.LesionArea, Row(18, 1.5, 0.1), Row(18, 1.5, 0.1 + rise)));

    [Theory]
    [InlineData(0.099, false)]
    [InlineData(0.101, true)]
    public void A_rise_of_a_thickness_has_to_pass_a_millimetre(double rise, bool isWorsening) =>
        Assert.Equal(isWorsening, IsWorsening(Measure.Thickness, Thick(1), Thick(1 + rise)));

    // Two cm of the level 18 between free ones 2 cm above and below: cm³ are 2 cm times its area.
    [Theory]
    [InlineData(0.099, false)]
    [InlineData(0.101, true)]
    public void A_rise_of_a_volume_has_to_pass_a_tenth_of_a_cubic_centimetre(double rise, bool isWorsening)
    {
        Assert.Equal(isWorsening, IsWorsening(Measure.LesionVolume, Levels(0.2), Levels(0.2 + (rise / 2))));

        static Reading[] Levels(double area) => [Row(16, 1.5, 0), Row(18, 1.5, area), Row(20, 1.5, 0)];
    }

    private static Reading Thick(double thickness) => Row(18) with { Thickness = new Centimetres(thickness) };

    private static bool IsWorsening(Measure measure, Reading first, Reading second) => IsWorsening(measure, [first], [second]);

    /// <summary>Two examinations, measured so well that any rise is beyond the error.</summary>
    private static bool IsWorsening(Measure measure, Reading[] first, Reading[] second)
    {
        Trend trend = Analysed(
            Case(Exam(0, first), Exam(60, second)),
            new AnalysisSettings
            {
                Error = new MeasurementErrorSettings
                {
                    LesionAreaCv = 0.001,
                    AreaFloorCm2 = 0.001,
                    ThicknessCv = 0.001,
                    LengthFloorCm = 0.001,
                    SharedGainLog = 0,
                },
            }
        ).Trend;
        Assert.Equal(measure, trend.Measure);
        Assert.True(trend.ChangePercent > trend.DetectableRisePercent);
        return trend.Verdict == Verdict.Worsening;
    }

    // Arithmetic: the widest Theil-Sen interval reaches from the smallest to the largest slope of two points, and misses the truth where all
    // pairs rise or all fall: 2 of n! orders. So below five points no 95 % interval exists, and the trend shows none.
    [Theory]
    [InlineData(3, 0.6667)]
    [InlineData(4, 0.9167)]
    [InlineData(5, 0.9833)]
    public void The_widest_interval_of_rank_slopes_holds_the_truth_this_often(int points, double expected) =>
        Assert.Equal(expected, 1 - Kendall.Of([.. Enumerable.Range(0, points)]).TwoSided, 0.00005);

    // R 4.2.2: cor.test(1:5, c(3, 3, 2, 1, 1), method = "kendall") gives p = .03671; SciPy 1.10.1: stats.kendalltau(range(5), [3, 3, 2, 1, 1],
    // method="asymptotic") .0367138563627041. The exact one is .0667.
    [Fact]
    public void The_normal_approximation_of_five_grades_would_be_falsely_significant()
    {
        Kendall kendall = Kendall.Of([3, 3, 2, 1, 1]);
        // Variance of S with two ties of two (Kendall 1970, Rank Correlation Methods; from memory): (n(n−1)(2n+5) − Σt(t−1)(2t+5))/18.
        double variance = ((5 * 4 * 15) - (2 * 2 * 1 * 9)) / 18.0;
        double approximate = 2 * Normal.CDF(0, 1, -Math.Abs(kendall.S) / Math.Sqrt(variance));
        Assert.Equal(0.0367138563627041, approximate, 12);
        Assert.True(approximate < Trend.GradesProbability && kendall.TwoSided > Trend.GradesProbability);
    }

    // Arithmetic: (4/3)·π·4·.5·.4 cm³. Trapezoids over the levels of BurdenTests come near it from below: 17 levels within half a percent.
    [Fact]
    public void The_ellipsoid_of_the_worked_volumes_holds_this_much()
    {
        double exact = 4.0 / 3 * Math.PI * 4 * 0.5 * 0.4;
        Assert.Equal(3.351032163829113, exact, 14);
        Assert.InRange(3.337942194439155 / exact, 0.995, 1);
    }
}
