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

    [Fact]
    public void With_one_level_in_ten_missed_they_are_kept_as_far_as_so_few_cases_can_tell() =>
        Assert.All(VerdictStudy.Rows("linker, 10 % missed", Cases, ReadingHabit.OnTheTape(0.10), isLinked: true), Kept);

    [Fact]
    public void The_bars_of_linking_are_kept() => Assert.All(LinkingStudy.Run(100), Kept);

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void The_interval_of_the_slope_holds_the_true_rate_as_often_as_it_says(int examinations) =>
        Assert.All(CoverageStudy.Rows(Cases, examinations, 1), Kept);

    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    public void The_interval_still_holds_when_the_error_is_half_as_large_again_as_assumed(int examinations) =>
        Assert.All(CoverageStudy.Rows(Cases, examinations, 1.5), Kept);

    [Theory]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    public void The_interval_of_the_projection_holds_the_day_as_often_as_it_says(int examinations)
    {
        StudyRow[] rows = [.. ProjectionStudy.Rows(Cases, examinations, 90)];
        Assert.Equal([true, false], rows.Select(row => row.Bar?.IsLeast).OfType<bool>());
        Assert.All(rows, Kept);
    }

    // Project methods, section 3, simulated: SD of log volume .062 over linked positions against .101 on the raw tape; a level filled from
    // its neighbours is off by -11 %. Our lesions are others, so their figures are too; the order must be the same.
    [Fact]
    public void Volumes_scatter_less_over_linked_positions_than_on_the_tape_and_history_fills_better_than_neighbours()
    {
        Assert.All(
            ((double[])[0, 0.05]).Select(missed => VolumeStudy.Scatter(Cases, missed).ToArray()),
            rows =>
            {
                Assert.InRange(rows[1].Reached, 0.05, 0.09);
                Assert.InRange(rows[0].Reached, 1.4 * rows[1].Reached, 3 * rows[1].Reached);
            }
        );
        StudyRow[] filled = [.. VolumeStudy.Filling(Cases)];
        Assert.InRange(filled[2].Reached, -0.13, -0.07);
        Assert.All([filled[1], filled[3]], row => Assert.InRange(row.Reached, -0.03, 0.03));
    }

    // Project methods, section 4, simulated: about 23 % of lesions that never change would be called healing once in five looks at 1.645, about
    // 5 % at 2.326 (WorkedNumbersTests reckons both).
    [Fact]
    public void A_laxer_line_calls_a_lesion_healing_that_never_changes()
    {
        StudyRow[] rows = [.. FailureStudy.HealingLines(3 * Cases)];
        Assert.Equal(0.23, rows[0].Reached, 0.045);
        Assert.Equal(0.05, rows[1].Reached, 0.025);
    }

    [Fact]
    public void The_slower_a_lesion_heals_and_the_larger_the_unknown_error_the_more_often_the_verdict_is_wrong()
    {
        double[] slow = [.. FailureStudy.SlowHealers(Cases).Select(row => row.Reached)];
        Assert.Equal(slow.Order(), slow);
        Assert.True(slow[0] <= 0.03 && slow[^1] >= 0.4, string.Join(" ", slow));
        double[] errors = [.. FailureStudy.WrongErrors(Cases).Select(row => row.Reached)];
        Assert.True(errors[0] < errors[2] && errors[2] < errors[4] && errors[4] < errors[6], string.Join(" ", errors));
    }

    private static void Kept(StudyRow row) => Assert.True(row.KeepsWithinChance, row.ToString());
}
