using MathNet.Numerics.Distributions;
using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Rechecks.Tests.Healing;

/// <summary>
/// Dunnett 1955 (JASA 50:1096, from memory) and Tukey's studentised range, with infinitely many degrees of freedom; the values are those of
/// R 4.2.2, its commands beside them.
/// </summary>
public sealed class ComparisonFactorsTests
{
    // f <- function(c, k) integrate(function(z) dnorm(z) * (pnorm(z + c * sqrt(2)) - pnorm(z - c * sqrt(2)))^k, -9, 9)$value;
    // sapply(1:7, function(k) uniroot(function(c) f(c, k) - .95, c(1, 4), tol = 1e-9)$root)
    [Theory]
    [InlineData(1, 1.9600)]
    [InlineData(2, 2.2121)]
    [InlineData(3, 2.3490)]
    [InlineData(4, 2.4418)]
    [InlineData(5, 2.5115)]
    [InlineData(6, 2.5670)]
    [InlineData(7, 2.6130)]
    public void A_recheck_against_the_baseline_takes_Dunnetts_factor(int rechecks, double expected) =>
        Assert.Equal(expected, ComparisonFactors.WithBaseline(rechecks), 0.00006);

    // The project's methods give three digits, seemingly from simulation: the second column. At two rechecks the factor must be Dunnett's
    // 2.2121, since the two correlations differ only in sign; the tabled 2.213 is not. The exact values stand here.
    [Theory]
    [InlineData(1, 1.960, 1.9600)]
    [InlineData(2, 2.213, 2.2121)]
    [InlineData(3, 2.362, 2.3603)]
    [InlineData(4, 2.466, 2.4635)]
    [InlineData(5, 2.546, 2.5422)]
    [InlineData(6, 2.610, 2.6055)]
    [InlineData(7, 2.662, 2.6582)]
    public void Neighbouring_examinations_have_their_own_factor(int rechecks, double tabled, double exact)
    {
        Assert.Equal(exact, ComparisonFactors.Neighbouring(rechecks), 0.00006);
        Assert.Equal(tabled, ComparisonFactors.Neighbouring(rechecks), 0.005);
    }

    [Fact]
    public void Two_neighbours_and_two_rechecks_of_a_baseline_have_the_same_factor() =>
        Assert.Equal(ComparisonFactors.WithBaseline(2), ComparisonFactors.Neighbouring(2), 7);

    // qtukey(.95, 2:8, Inf)/sqrt(2)
    [Theory]
    [InlineData(1, 1.9600)]
    [InlineData(2, 2.3437)]
    [InlineData(3, 2.5690)]
    [InlineData(4, 2.7278)]
    [InlineData(5, 2.8497)]
    [InlineData(6, 2.9483)]
    [InlineData(7, 3.0309)]
    public void Any_two_dates_take_Tukeys_factor(int rechecks, double expected) =>
        Assert.Equal(expected, ComparisonFactors.AnyTwo(rechecks), 0.00006);

    [Fact]
    public void Three_neighbours_are_checked_by_a_plain_double_integral()
    {
        // The middle two of four examinations on a grid, the outer two integrated out: another way to the same probability.
        double width = ComparisonFactors.Neighbouring(3) * Math.Sqrt(2);
        const double step = 0.01;
        double[] inner = [.. Enumerable.Range(-700, 1401).Select(i => Inner(i * step, width))];
        double sum = 0;
        for (int i = 0; i < inner.Length; i++)
        {
            for (int j = 0; j < inner.Length; j++)
            {
                double beyond = (Math.Abs(i - j) * step) - width;
                double share = Math.Clamp(0.5 - (beyond / step), 0, 1);
                sum += share * inner[i] * inner[j];
            }
        }

        Assert.Equal(0.95, sum * step * step, 0.00002);
    }

    private static double Inner(double x, double width) =>
        Normal.PDF(0, 1, x) * (Normal.CDF(0, 1, x + width) - Normal.CDF(0, 1, x - width));

    [Fact]
    public void Beyond_the_table_the_factors_go_on_growing_and_keep_their_order()
    {
        for (int rechecks = 8; rechecks <= 20; rechecks++)
        {
            Assert.True(ComparisonFactors.WithBaseline(rechecks) > ComparisonFactors.WithBaseline(rechecks - 1));
            Assert.True(ComparisonFactors.AnyTwo(rechecks) > ComparisonFactors.Neighbouring(rechecks));
            Assert.True(ComparisonFactors.Neighbouring(rechecks) > ComparisonFactors.WithBaseline(rechecks));
        }
    }

    [Fact]
    public void No_recheck_is_no_comparison() => Assert.Throws<ArgumentOutOfRangeException>(() => ComparisonFactors.AnyTwo(0));
}
