using MathNet.Numerics.Distributions;
using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Rechecks.Tests.Healing;

public sealed class LooksTests
{
    public static TheoryData<string, int> Families
    {
        get
        {
            TheoryData<string, int> families = [];
            foreach (string family in (string[])["baseline", "neighbouring", "any two"])
            {
                foreach (int rechecks in (int[])[1, 2, 5, 12])
                {
                    families.Add(family, rechecks);
                }
            }

            return families;
        }
    }

    private static Looks Of(string family, int rechecks) =>
        family switch
        {
            "baseline" => Looks.WithBaseline(rechecks),
            "neighbouring" => Looks.Neighbouring(rechecks),
            _ => Looks.AnyTwo(rechecks),
        };

    [Fact]
    public void One_comparison_named_beforehand_is_the_normal_distribution()
    {
        Assert.Equal(0.05, Looks.Once.Probability(1.959963984540054), 12);
        Assert.Equal(2 * Normal.CDF(0, 1, -1.2), Looks.Once.Probability(-1.2), 12);
        Assert.Equal(1, Looks.Once.Probability(0), 12);
        Assert.Equal(1.959963984540054, Looks.Once.Factor(0.05), 9);
        Assert.Equal(Looks.Once, default);
    }

    [Theory]
    [MemberData(nameof(Families))]
    public void At_five_percent_the_factor_is_the_one_of_the_table(string family, int rechecks)
    {
        double factor = family switch
        {
            "baseline" => ComparisonFactors.WithBaseline(rechecks),
            "neighbouring" => ComparisonFactors.Neighbouring(rechecks),
            _ => ComparisonFactors.AnyTwo(rechecks),
        };

        Assert.Equal(factor, Of(family, rechecks).Factor(0.05), 9);
        Assert.Equal(0.05, Of(family, rechecks).Probability(factor), 6);
    }

    [Theory]
    [MemberData(nameof(Families))]
    public void Probability_and_factor_are_each_others_inverse_down_to_the_strictest_level_of_two_hundred(string family, int rechecks)
    {
        Looks looks = Of(family, rechecks);
        foreach (double probability in (double[])[0.5, 0.2, 0.05 / 2, 0.05 / 6, 0.05 / 200])
        {
            Assert.Equal(1, looks.Probability(looks.Factor(probability)) / probability, 0.001);
        }
    }

    [Theory]
    [MemberData(nameof(Families))]
    public void A_larger_difference_is_never_more_probable_and_every_probability_is_one(string family, int rechecks)
    {
        Looks looks = Of(family, rechecks);
        double before = 1;
        for (double deviations = 0; deviations < 10; deviations += 0.05)
        {
            double probability = looks.Probability(deviations);
            Assert.InRange(probability, 0, before + 1e-6);
            before = probability;
        }

        Assert.Equal(0, looks.Probability(double.PositiveInfinity));
        Assert.Equal(1, looks.Probability(0));
    }

    [Theory]
    [MemberData(nameof(Families))]
    public void One_recheck_is_one_comparison_and_more_looks_make_a_difference_more_probable(string family, int rechecks)
    {
        Assert.Equal(Looks.Once.Probability(2.5), Of(family, 1).Probability(2.5), 6);
        Assert.True(Of(family, rechecks + 1).Probability(2.5) > Of(family, rechecks).Probability(2.5));
    }

    [Fact]
    public void Boole_bounds_what_many_looks_can_do() =>
        Assert.InRange(Looks.Neighbouring(5).Probability(3), Looks.Once.Probability(3), 5 * Looks.Once.Probability(3));

    [Theory]
    [InlineData(0)]
    [InlineData(0.51)]
    public void A_probability_that_asks_nothing_is_refused(double probability) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Looks.AnyTwo(2).Factor(probability));

    [Fact]
    public void No_recheck_is_no_comparison() => Assert.Throws<ArgumentOutOfRangeException>(() => Looks.Neighbouring(0));
}
