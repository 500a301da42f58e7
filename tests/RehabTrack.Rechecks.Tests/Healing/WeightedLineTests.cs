using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearRegression;
using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Rechecks.Tests.Healing;

public sealed class WeightedLineTests
{
    // NIST StRD, linear regression, Norris: 36 observations, y then x.
    private static readonly (double Y, double X)[] Norris =
    [
        (0.1, 0.2),
        (338.8, 337.4),
        (118.1, 118.2),
        (888.0, 884.6),
        (9.2, 10.1),
        (228.1, 226.5),
        (668.5, 666.3),
        (998.5, 996.3),
        (449.1, 448.6),
        (778.9, 777.0),
        (559.2, 558.2),
        (0.3, 0.4),
        (0.1, 0.6),
        (778.1, 775.5),
        (668.8, 666.9),
        (339.3, 338.0),
        (448.9, 447.5),
        (10.8, 11.6),
        (557.7, 556.0),
        (228.3, 228.1),
        (998.0, 995.8),
        (888.8, 887.6),
        (119.6, 120.2),
        (0.3, 0.3),
        (0.6, 0.3),
        (557.6, 556.8),
        (339.3, 339.1),
        (888.0, 887.2),
        (998.5, 999.0),
        (778.9, 779.0),
        (10.2, 11.1),
        (117.6, 118.3),
        (228.9, 229.2),
        (668.4, 669.1),
        (449.2, 448.9),
        (0.2, 0.5),
    ];

    private static readonly double[] Days = [0, 60, 120, 180, 240];
    private static readonly double[] LogAreas = [.. new[] { 0.90, 0.72, 0.61, 0.47, 0.40 }.Select(area => Math.Log(area))];

    [Fact]
    public void Equal_weights_give_the_certified_line_of_Norris()
    {
        double[] x = [.. Norris.Select(point => point.X)];
        WeightedLine line = WeightedLine.Through(x, [.. Norris.Select(point => point.Y)], [.. x.Select(_ => 1.0)]);
        double residual = Math.Sqrt(line.ResidualSum / line.DegreesOfFreedom);
        Assert.Equal(-0.262323073774029, line.Intercept, 11);
        Assert.Equal(1.00211681802045, line.Slope, 12);
        Assert.Equal(0.884796396144373, residual, 12);
        Assert.Equal(4.29796848199937e-4, residual * line.SlopeStandardError, 15);
        // The error of the intercept follows from that of the slope: √(1/Σw + x̄²/Σw(x − x̄)²).
        double mean = x.Average();
        double intercept = Math.Sqrt((1.0 / x.Length) + (mean * mean * line.SlopeStandardError * line.SlopeStandardError));
        Assert.Equal(0.232818234301152, residual * intercept, 12);
    }

    /// <summary>Some hundred random series, long and short, near and far from x = 0, against the fits of MathNet.Numerics (QR and normal equations).</summary>
    [Fact]
    public void Random_series_have_the_lines_of_MathNet()
    {
        Random random = new(1886);
        for (int trial = 0; trial < 300; trial++)
        {
            int count = random.Next(2, 13);
            double start = random.Next(2) == 0 ? 0 : 500 * random.NextDouble();
            double[] x = [.. Enumerable.Range(0, count).Select(i => start + (60 * i) + (40 * random.NextDouble()))];
            double[] y = [.. x.Select(day => Math.Log(1 + random.NextDouble()) - (0.003 * day))];
            double[] same = [.. x.Select(_ => 0.08)];
            double[] own = [.. x.Select(_ => 0.02 + (0.3 * random.NextDouble()))];

            (double intercept, double slope) = Fit.Line(x, y);
            WeightedLine equal = WeightedLine.Through(x, y, same);
            Assert.Equal(intercept, equal.Intercept, 10);
            Assert.Equal(slope, equal.Slope, 12);

            Matrix<double> design = Matrix<double>.Build.Dense(count, 2, (i, j) => j == 0 ? 1 : x[i]);
            Matrix<double> weights = Matrix<double>.Build.DenseDiagonal(count, count, i => 1 / (own[i] * own[i]));
            Vector<double> weighted = WeightedRegression.Weighted(design, Vector<double>.Build.Dense(y), weights);
            WeightedLine unequal = WeightedLine.Through(x, y, own);
            Assert.Equal(weighted[0], unequal.Intercept, 9);
            Assert.Equal(weighted[1], unequal.Slope, 11);
            // With known errors the covariance of the two is the inverse of the weighted normal matrix.
            double error = Math.Sqrt(design.TransposeThisAndMultiply(weights * design).Inverse()[1, 1]);
            Assert.Equal(1, unequal.SlopeStandardError / error, 8);
        }
    }

    [Fact]
    public void Series_S_has_the_slope_and_error_of_R()
    {
        // Series S, our own. R 4.2.2: t <- seq(0, 240, 60); f <- lm(log(c(.90, .72, .61, .47, .40)) ~ t); coef(summary(f)).
        // SciPy 1.10.1: stats.linregress(np.arange(0, 241, 60), np.log([.90, .72, .61, .47, .40])), slope and stderr.
        WeightedLine line = WeightedLine.Through(Days, LogAreas, [1, 1, 1, 1, 1]);
        Assert.Equal(-0.00341396491623109, line.Slope, 15);
        Assert.Equal(0.000134493055103731, Math.Sqrt(line.ResidualSum / line.DegreesOfFreedom) * line.SlopeStandardError, 15);
    }

    [Fact]
    public void Series_S_has_the_moderated_interval()
    {
        // Series S with d0 = 6 and sd .08 (Smyth 2004). R 4.2.2, after these: w <- 1/.08^2; S <- w * sum((t - mean(t))^2);
        // p <- (6 + w * sum(resid(f)^2))/9; 100 * (exp(60 * (coef(f)[2] + c(-1, 0, 1) * qt(.975, 9) * sqrt(p/S))) - 1).
        WeightedLine line = WeightedLine.Through(Days, LogAreas, [0.08, 0.08, 0.08, 0.08, 0.08]);
        (double lower, double upper) = line.ModeratedInterval(6);
        Assert.Equal(-22.333, Percent(lower), 0.0005);
        Assert.Equal(-18.522, Percent(line.Slope), 0.0005);
        Assert.Equal(-14.524, Percent(upper), 0.0005);
    }

    [Fact]
    public void A_point_that_is_known_badly_pulls_less()
    {
        WeightedLine even = WeightedLine.Through([0, 1, 2], [0, 0, 3], [1, 1, 1]);
        WeightedLine doubted = WeightedLine.Through([0, 1, 2], [0, 0, 3], [1, 1, 10]);
        Assert.Equal(1.5, even.Slope, 12);
        Assert.True(doubted.Slope < 0.2);
        Assert.True(doubted.SlopeStandardError > even.SlopeStandardError);
    }

    [Fact]
    public void Two_points_have_an_interval_from_the_prior_alone()
    {
        WeightedLine line = WeightedLine.Through([0, 60], [0, -0.2], [0.1, 0.1]);
        (double lower, double upper) = line.ModeratedInterval(6);
        Assert.Equal(-0.2 / 60, (lower + upper) / 2, 14);
        Assert.Equal(2.446911851 * Math.Sqrt(2) * 0.1 / 60, (upper - lower) / 2, 10);
    }

    /// <summary>The quantile of t is searched once for each number of points; the measure is asked first whether it sees that.</summary>
    [Fact]
    public void A_series_is_fitted_without_taking_memory()
    {
        double[] deviations = [0.08, 0.08, 0.08, 0.08, 0.08];
        const double unusual = 6.125;
        long before = GC.GetAllocatedBytesForCurrentThread();
        (double lower, _) = WeightedLine.Through(Days, LogAreas, deviations).ModeratedInterval(unusual);
        Assert.NotEqual(before, GC.GetAllocatedBytesForCurrentThread());

        before = GC.GetAllocatedBytesForCurrentThread();
        (double again, _) = WeightedLine.Through(Days, LogAreas, deviations).ModeratedInterval(unusual);
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        Assert.Equal(lower, again);
    }

    // R 4.2.2: qt(.975, c(1, 2, 3, 6)).
    [Theory]
    [InlineData(1, 12.706204736)]
    [InlineData(2, 4.302652730)]
    [InlineData(3, 3.182446305)]
    [InlineData(6, 2.446911851)]
    public void The_quantiles_of_t_are_those_of_the_tables(double freedom, double expected) =>
        Assert.Equal(expected, StudentT.InvCDF(0, 1, freedom, 0.975), 1e-9);

    [Fact]
    public void One_date_is_no_line() => Assert.Throws<ArgumentException>(() => WeightedLine.Through([3, 3], [1, 2], [1, 1]));

    [Fact]
    public void A_point_without_its_size_or_error_is_refused()
    {
        Assert.Throws<ArgumentException>("y", () => WeightedLine.Through([1, 2, 3], [1, 2], [1, 1, 1]));
        Assert.Throws<ArgumentException>("y", () => WeightedLine.Through([1, 2, 3], [1, 2, 3], [1, 1]));
    }

    private static double Percent(double perDay) => 100 * (Math.Exp(60 * perDay) - 1);
}
