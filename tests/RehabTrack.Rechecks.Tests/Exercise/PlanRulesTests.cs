using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Simulation.Permits;

namespace RehabTrack.Rechecks.Tests.Exercise;

public sealed class PlanRulesTests
{
    private static readonly PlanVersion Good = Plans.Simple;

    public static TheoryData<string, string, string> Bad
    {
        get
        {
            TheoryData<string, string, string> rows = [];
            foreach ((string name, string where, string code, _) in Cases)
            {
                rows.Add(name, where, code);
            }

            return rows;
        }
    }

    private static IReadOnlyList<(string Name, string Field, string Code, Func<PlanVersion, PlanVersion> Spoil)> Cases =>
        [
            ("no steps", "steps", "plan-without-steps", plan => plan with { Steps = [] }),
            ("no name", "steps[0].name", "step-without-name", plan => First(plan, step => step with { Name = " " })),
            ("zero length", "steps[0].length", "step-length-out-of-range", plan => First(plan, step => step with { ShortestDays = 0 })),
            (
                "negative length",
                "steps[0].length",
                "step-length-out-of-range",
                plan => First(plan, step => step with { ShortestDays = -7 })
            ),
            ("endless", "steps[0].length", "step-length-out-of-range", plan => First(plan, step => step with { ShortestDays = 10000 })),
            (
                "no rhythm",
                "steps[0].recheckIntervalDays",
                "interval-out-of-range",
                plan => First(plan, step => step with { RecheckIntervalDays = 0 })
            ),
            ("eight days", "steps[0].daysAWeek", "days-a-week-out-of-range", plan => First(plan, step => step with { DaysAWeek = 8 })),
            ("minus days", "steps[0].daysAWeek", "days-a-week-out-of-range", plan => First(plan, step => step with { DaysAWeek = -1 })),
            ("minus outings", "steps[0].outingsADay", "outings-negative", plan => First(plan, step => step with { OutingsADay = -1 })),
            ("minus minutes", "steps[0].walk", "minutes-negative", plan => First(plan, step => step with { Walk = new GaitRule(-5) })),
            ("minus growth", "steps[0].walk", "minutes-negative", plan => First(plan, step => step with { Walk = new GaitRule(5, -1, 9) })),
            ("over a day", "steps[0].trot", "minutes-over-a-day", plan => First(plan, step => step with { Trot = new GaitRule(1441) })),
            ("gaits over a day", "steps[0]", "outing-over-a-day", plan => First(plan, step => step with { Trot = new GaitRule(1425) })),
            ("outings over a day", "steps[0]", "outings-over-a-day", plan => First(plan, step => step with { OutingsADay = 49 })),
            (
                "above ceiling",
                "steps[0].walk",
                "start-above-ceiling",
                plan => First(plan, step => step with { Walk = new GaitRule(30, 5, 20) })
            ),
            ("no ceiling", "steps[0].trot", "growth-without-ceiling", plan => First(plan, step => step with { Trot = new GaitRule(0, 2) })),
            ("gate at the end", "steps[2].gate", "gate-after-last-step", plan => Last(plan, step => step with { Gate = new Gate("", []) })),
            ("minus cap", "caps.day", "cap-out-of-range", plan => plan with { Caps = new PlanCaps(DayMinutes: -1) }),
            ("big cap", "caps.outing", "cap-out-of-range", plan => plan with { Caps = new PlanCaps(1441) }),
            ("floor of minus", "floor", "floor-out-of-range", plan => plan with { Floor = Plans.Walk(-1) }),
            ("floor of eight days", "floor", "floor-out-of-range", plan => plan with { Floor = Plans.Walk(10) with { DaysAWeek = 8 } }),
            ("floor over outing", "floor", "floor-above-cap", plan => plan with { Floor = Plans.Walk(10), Caps = new PlanCaps(9) }),
            (
                "floor over day",
                "floor",
                "floor-above-cap",
                plan => plan with { Floor = Plans.Walk(10), Caps = new PlanCaps(DayMinutes: 9) }
            ),
            (
                "floor over week",
                "floor",
                "floor-above-cap",
                plan => plan with { Floor = Plans.Walk(10), Caps = new PlanCaps(WeekMinutes: 69) }
            ),
        ];

    [Fact]
    public void A_good_plan_has_no_problem() => Assert.Equal([], PlanRules.Check(Good with { Floor = Plans.Walk(10) }));

    [Theory]
    [MemberData(nameof(Bad))]
    public void A_bad_plan_is_told_where_and_why(string name, string where, string code)
    {
        PlanVersion spoilt = Cases.Single(row => row.Name == name).Spoil(Good);

        Problem problem = Assert.Single(PlanRules.Check(spoilt));
        Assert.Equal((where, code), (problem.Field, problem.Code));
    }

    [Theory]
    [MemberData(nameof(Bad))]
    public void A_bad_plan_that_got_signed_permits_nothing(string name, string where, string code)
    {
        PlanVersion spoilt = Cases.Single(row => row.Name == name).Spoil(Good);
        Story story = Story.Of(spoilt).LogsEach(0, 20);

        Assert.All(new[] { 0, 1, 8, 20 }, day => Assert.Equal(Work.None, story.On(day).Work));
        Assert.Contains(story.On(0).Reasons, reason => reason.Code == PermitReasonCode.PlanHasProblems);
        Assert.False(PlanRules.Check(spoilt).All(problem => problem.Field != where || problem.Code != code));
    }

    [Fact]
    public void All_problems_come_at_once() =>
        Assert.Equal(
            ["step-length-out-of-range", "days-a-week-out-of-range", "growth-without-ceiling", "cap-out-of-range"],
            PlanRules
                .Check(
                    First(
                        Good with
                        {
                            Caps = new PlanCaps(-1),
                        },
                        step => step with { ShortestDays = 0, DaysAWeek = 9, Trot = new GaitRule(0, 2) }
                    )
                )
                .Select(problem => problem.Code)
        );

    [Fact]
    public void Unfilled_rows_are_no_problem_and_permit_nothing()
    {
        PlanVersion plan = Good with { Steps = [new PlanStep { Name = "walk", ShortestDays = 28 }] };

        Assert.Equal([], PlanRules.Check(plan));
        Assert.Equal(Work.None, Story.Of(plan).On(0).Work);
    }

    [Theory]
    [InlineData(3, 0, "step-not-in-plan")]
    [InlineData(-1, 0, "step-not-in-plan")]
    [InlineData(0, -1, "days-in-step-out-of-range")]
    [InlineData(0, 100000, "days-in-step-out-of-range")]
    public void A_place_outside_the_plan_is_told(int step, int days, string code) =>
        Assert.Equal([code], PlanRules.CheckPlace(Good, new PlanPlace(step, days)).Select(problem => problem.Code));

    [Fact]
    public void A_place_in_the_plan_is_none() => Assert.Equal([], PlanRules.CheckPlace(Good, new PlanPlace(2, 40)));

    private static PlanVersion First(PlanVersion plan, Func<PlanStep, PlanStep> change) =>
        plan with
        {
            Steps = [change(plan.Steps[0]), .. plan.Steps.Skip(1)],
        };

    private static PlanVersion Last(PlanVersion plan, Func<PlanStep, PlanStep> change) =>
        plan with
        {
            Steps = [.. plan.Steps.SkipLast(1), change(plan.Steps[^1])],
        };
}
