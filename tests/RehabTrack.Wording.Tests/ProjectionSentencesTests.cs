using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Wording.Tests;

public sealed class ProjectionSentencesTests
{
    private static readonly Projection Whole = new()
    {
        Target = 0.2,
        Median = new DateOnly(2027, 2, 1),
        Lower50 = new DateOnly(2027, 1, 10),
        Upper50 = new DateOnly(2027, 3, 1),
        Lower90 = new DateOnly(2026, 12, 20),
        Upper90 = new DateOnly(2027, 5, 1),
        Limit = new DateOnly(2027, 8, 1),
        ReachedByLimit = 0.98,
        ReachedByNext = 0.35,
        Next = new DateOnly(2027, 1, 18),
    };

    [Fact]
    public void Intervals_that_end_before_the_limit_are_told_whole() =>
        Assert.Equal(
            "Half of such courses reach the target of 0.20 cm³ between 10 Jan 2027 and 1 Mar 2027, nine in ten between 20 Dec 2026 and 1 May 2027. By a recheck on 18 Jan 2027 it is 35 %.",
            Said(Whole)
        );

    [Fact]
    public void An_open_end_is_called_open() =>
        Assert.StartsWith(
            "Half of such courses reach the target of 0.20 cm³ between 10 Jan 2027 and 1 Mar 2027, one in ten before 20 Dec 2026. How late the slowest are, these examinations cannot say.",
            Said(Whole with { Upper90 = null }),
            StringComparison.Ordinal
        );

    [Fact]
    public void Where_only_the_half_is_reached_in_time_its_day_is_told() =>
        Assert.StartsWith(
            "One in ten of such courses reach the target of 0.20 cm³ before 20 Dec 2026, half by 1 Feb 2027, 60 % by 1 Aug 2027. These",
            Said(Whole with { Upper90 = null, Upper50 = null, ReachedByLimit = 0.6 }),
            StringComparison.Ordinal
        );

    [Fact]
    public void What_lies_far_gets_the_begin_of_its_interval_and_a_share() =>
        Assert.StartsWith(
            "One in ten of such courses reach the target of 0.20 cm³ before 20 Dec 2026, 30 % by 1 Aug 2027. These",
            Said(Open with { ReachedByLimit = 0.3 }),
            StringComparison.Ordinal
        );

    [Fact]
    public void What_lies_too_far_gets_a_share_and_no_date() =>
        Assert.StartsWith(
            "4 % of such courses reach the target of 0.20 cm³ by 1 Aug 2027. These",
            Said(Open with { Lower90 = null, ReachedByLimit = 0.04 }),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_recheck_beyond_the_limit_or_without_a_chance_is_not_told()
    {
        Assert.DoesNotContain("recheck", Said(Whole with { Next = Whole.Limit }), StringComparison.Ordinal);
        Assert.DoesNotContain("recheck", Said(Whole with { ReachedByNext = 0.004 }), StringComparison.Ordinal);
    }

    private static Projection Open => Whole with { Upper90 = null, Lower50 = null, Upper50 = null, Median = null };

    private static string Said(Projection projection) => ProjectionSentences.Of(projection, "0.20 cm³").Replace('\u00a0', ' ');
}
