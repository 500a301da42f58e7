using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Tests.Healing;

public sealed class SeverityScalesTests
{
    // SAEVA 191.
    [Theory]
    [InlineData(0, 1)]
    [InlineData(15.0, 1)]
    [InlineData(15.1, 2)]
    [InlineData(25.0, 2)]
    [InlineData(25.1, 3)]
    [InlineData(100, 3)]
    [InlineData(140, 3)]
    public void Total_percent_is_mild_to_15_and_moderate_to_25(double percent, int expected) =>
        Assert.Equal(new SeverityGrade("total-percent", expected), SeverityScales.Of(SeverityScales.TotalPercent, new Percent(percent)));

    // Boado 2025.
    [Theory]
    [InlineData(24.9, 1)]
    [InlineData(25, 2)]
    [InlineData(50, 2)]
    [InlineData(50.1, 3)]
    public void A_branch_section_is_of_the_second_class_from_25_to_50(double percent, int expected) =>
        Assert.Equal(new SeverityGrade("branch-section", expected), SeverityScales.Of(SeverityScales.BranchSection, new Percent(percent)));

    [Fact]
    public void A_limit_is_not_missed_by_the_last_binary_digit() =>
        Assert.Equal(1, SeverityScales.Of(SeverityScales.TotalPercent, new Percent(100 * (0.1 + 0.2) / 2.0)).Class);

    [Fact]
    public void Another_scale_is_a_bug_that_names_it() =>
        Assert.Contains(
            "width",
            Assert.Throws<ArgumentException>(() => SeverityScales.Of("width", new Percent(1))).Message,
            StringComparison.Ordinal
        );
}
