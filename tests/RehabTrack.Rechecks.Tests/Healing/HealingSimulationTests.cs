using RehabTrack.Simulation.Cases;
using RehabTrack.Simulation.Studies;

namespace RehabTrack.Rechecks.Tests.Healing;

/// <summary>
/// A short run of tests/RehabTrack.Simulation: a bar counts as missed when the share found lies beyond it by more than chance explains
/// (2.33 binomial standard errors). docs/methods/healing.md holds what the whole study reached.
/// </summary>
public sealed class HealingSimulationTests
{
    private const int Cases = 200;

    [Fact]
    public void With_true_links_the_bars_of_the_verdicts_are_kept() =>
        Assert.All(VerdictStudy.Rows("true links", Cases, new ReadingHabit(), isLinked: false), Kept);

    [Fact]
    public void Through_the_linker_with_its_wrong_links_they_are_kept_too() =>
        Assert.All(VerdictStudy.Rows("linker, 5 % missed", Cases, ReadingHabit.OnTheTape(0.05), isLinked: true), Kept);

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(8)]
    public void The_interval_of_the_slope_holds_the_true_rate_as_often_as_it_says(int examinations) =>
        Assert.All(CoverageStudy.Rows(Cases, examinations, 1), Kept);

    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    public void The_interval_still_holds_when_the_error_is_half_as_large_again_as_assumed(int examinations) =>
        Assert.All(CoverageStudy.Rows(Cases, examinations, 1.5), Kept);

    private static void Kept(StudyRow row) => Assert.True(row.KeepsWithinChance, row.ToString());
}
