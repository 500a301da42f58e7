using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Rechecks.Tests.Healing;

public sealed class KendallTests
{
    // docs/methods/healing.md, by full enumeration; the normal approximation gives .0367 for the first and would be wrong.
    [Theory]
    [InlineData(new[] { 3, 3, 2, 1, 1 }, -8, 0.0666667)]
    [InlineData(new[] { 3, 2, 2, 1 }, -5, 0.166667)]
    public void Ties_are_counted_exactly(int[] grades, int s, double twoSided)
    {
        Kendall kendall = Kendall.Of(grades);
        Assert.Equal(s, kendall.S);
        Assert.Equal(twoSided, kendall.TwoSided, 0.0000005);
    }

    [Fact]
    public void Sens_seven_values_rise_with_the_probability_of_one_order_on_either_side()
    {
        // Sen 1968: y 9 15 19 20 45 55 78, exact p .000396825396825 = 2/7!.
        Assert.Equal(0.000396825396825, Kendall.Of([9, 15, 19, 20, 45, 55, 78]).TwoSided, 15);
    }

    [Fact]
    public void One_side_of_a_strict_rise_of_four_is_one_order_in_24() => Assert.Equal(1.0 / 24, Kendall.Of([0, 1, 2, 3]).Rise, 12);

    [Fact]
    public void Equal_grades_say_nothing() => Assert.Equal(1, Kendall.Of([2, 2, 2, 2]).TwoSided);

    [Fact]
    public void A_long_series_is_judged_by_its_last_nine()
    {
        Kendall kendall = Kendall.Of([0, 0, 0, 3, 3, 3, 2, 2, 2, 1, 1, 1]);
        Assert.Equal(-27, kendall.S);
        Assert.Equal(2.0 / 1680, kendall.TwoSided, 12);
    }

    // docs/methods/healing.md: read 3 then 2.
    [Fact]
    public void A_grade_that_fell_once_is_not_proof()
    {
        GradeComparison comparison = GradeComparison.Of(3, 2);
        Assert.Equal(0.737, comparison.Better, 0.0005);
        Assert.Equal(0.242, comparison.Same, 0.0005);
        Assert.Equal(0.020, comparison.Worse, 0.0005);
    }

    [Fact]
    public void A_grade_off_the_scale_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => GradeComparison.Of(4, 0));
}
