using RehabTrack.Rechecks.Exercise;
using RehabTrack.Simulation.Permits;

namespace RehabTrack.Rechecks.Tests.Exercise;

public sealed class DecisionRulesTests
{
    private static readonly Decision Good = new()
    {
        Kind = DecisionKind.Advance,
        PlanVersionId = Plans.Simple.Id,
        From = Story.Day(10),
        Place = new PlanPlace(1, 0),
        Limits = new OutingLimits(Trot: 0),
        Floor = Plans.Walk(5),
    };

    private static string[] Codes(Decision decision) => [.. DecisionRules.Check(decision, Plans.Simple).Select(problem => problem.Code)];

    [Fact]
    public void A_good_decision_has_no_problem() => Assert.Equal([], Codes(Good));

    [Theory]
    [InlineData(DecisionKind.Advance, true)]
    [InlineData(DecisionKind.StepBack, true)]
    [InlineData(DecisionKind.Hold, false)]
    [InlineData(DecisionKind.Stop, false)]
    [InlineData(DecisionKind.Pause, false)]
    [InlineData(DecisionKind.Close, false)]
    public void Only_advance_and_step_back_need_a_place(DecisionKind kind, bool needs) =>
        Assert.Equal(needs ? ["place-missing"] : [], Codes(Good with { Kind = kind, Place = null }));

    [Fact]
    public void All_problems_come_at_once() =>
        Assert.Equal(
            ["step-not-in-plan", "minutes-negative", "floor-out-of-range"],
            Codes(Good with { Place = new PlanPlace(9, 0), Limits = new OutingLimits(Walk: -1), Floor = Plans.Walk(-5) })
        );
}
