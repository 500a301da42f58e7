using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Rechecks.Tests.Healing;

public sealed class KendallTests
{
    // Every order written out in R 4.2.2: p <- function(v) if (length(v) < 2) list(v) else do.call(c, lapply(seq_along(v), function(i)
    // lapply(p(v[-i]), function(r) c(v[i], r)))); s <- function(g) sum(sign(outer(g, g, "-"))[lower.tri(diag(length(g)))]);
    // g <- c(3, 3, 2, 1, 1); c(s(g), mean(abs(sapply(p(g), s)) >= abs(s(g)))). The normal approximation: WorkedNumbersTests.
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
        // Sen 1968 (JASA 63:1379, from memory): y 9 15 19 20 45 55 78, exact p 2/7!. SciPy 1.10.1:
        // stats.kendalltau([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78], method="exact").
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

    // Bayes' rule on the misread model of shared/grade-misread.md, read 3 then 2. R 4.2.2: L <- matrix(c(.8, .2, 0, 0, .1, .8, .1, 0, 0, .1, .8,
    // .1, 0, 0, .2, .8), 4, byrow = TRUE); p <- outer(L[, 4]/sum(L[, 4]), L[, 3]/sum(L[, 3]));
    // c(sum(p[row(p) > col(p)]), sum(diag(p)), sum(p[row(p) < col(p)])).
    [Fact]
    public void A_grade_that_fell_once_is_not_proof()
    {
        GradeComparison comparison = GradeComparison.Of(3, 2);
        Assert.Equal(0.737, comparison.Better, 0.0005);
        Assert.Equal(0.242, comparison.Same, 0.0005);
        Assert.Equal(0.020, comparison.Worse, 0.0005);
    }

    [Theory]
    [InlineData(4, 0, "before")]
    [InlineData(-1, 0, "before")]
    [InlineData(0, 4, "after")]
    [InlineData(0, -1, "after")]
    public void A_grade_off_the_scale_is_refused(int before, int after, string name) =>
        Assert.Throws<ArgumentOutOfRangeException>(name, () => GradeComparison.Of(before, after));

    [Fact]
    public void Better_same_and_worse_are_all_there_is()
    {
        foreach ((int before, int after) in Enumerable.Range(0, 16).Select(pair => (pair / 4, pair % 4)))
        {
            GradeComparison comparison = GradeComparison.Of(before, after);
            Assert.Equal(1, comparison.Better + comparison.Same + comparison.Worse, 12);
            Assert.Equal(comparison.Worse, GradeComparison.Of(after, before).Better, 12);
        }
    }
}
