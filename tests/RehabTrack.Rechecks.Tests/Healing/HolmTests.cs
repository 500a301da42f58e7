using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Rechecks.Tests.Healing;

public sealed class HolmTests
{
    [Fact]
    public void The_smallest_is_held_to_the_strictest_and_order_never_swaps()
    {
        // R: p.adjust(c(.01, .04, .03, .005), "holm") gives .03 .06 .06 .02.
        Assert.Equal([0.03, 0.06, 0.06, 0.02], Holm.Adjust([0.01, 0.04, 0.03, 0.005]).Select(p => Math.Round(p, 12)));
    }

    [Fact]
    public void A_probability_never_passes_one() => Assert.Equal([1, 1], Holm.Adjust([0.9, 0.8]));

    [Fact]
    public void Nothing_to_judge_is_nothing_judged() => Assert.Empty(Holm.Adjust([]));
}
