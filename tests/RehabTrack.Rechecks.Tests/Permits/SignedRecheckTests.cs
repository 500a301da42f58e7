using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Simulation.Permits;

namespace RehabTrack.Rechecks.Tests.Permits;

/// <summary>Which recheck the signatures ask for, on a plan of 28 and 14 days before its gate.</summary>
public sealed class SignedRecheckTests
{
    private static readonly PlanVersion Plan = Plans.Simple;

    private static SignedRecheck On(Story story, int day) => PermitReader.RecheckOn(story.History, Story.Day(day));

    private static PlanVersion Every(params int?[] days) =>
        Plan with
        {
            Steps = [.. Plan.Steps.Select((step, index) => step with { RecheckIntervalDays = days[index] })],
        };

    [Fact]
    public void Without_a_plan_nothing_is_asked_for() =>
        Assert.Equal(SignedRecheck.None, PermitReader.RecheckOn(PermitHistory.Empty, Story.Day(0)));

    [Theory]
    [InlineData(null, 42, true)]
    [InlineData(30, 30, false)]
    [InlineData(60, 42, true)]
    public void The_gate_and_the_date_that_the_vet_named_are_held_against_each_other(int? recheck, int due, bool isGate)
    {
        Story story = Story.Of(Plan, recheck: recheck is { } day ? Story.Day(day) : null);

        Assert.Equal(new SignedRecheck(Story.Day(due), isGate, null), On(story, 20));
    }

    [Fact]
    public void It_is_the_date_on_which_the_permit_stops_growing_whatever_was_logged_or_reported()
    {
        Story quiet = Story.Of(Plan);
        Story told = Story.Of(Plan).LogsEach(0, 20).Decides(DecisionKind.Hold, 10, recheck: 25);

        foreach (int day in new[] { 0, 9, 10, 24, 25, 50 })
        {
            Assert.Equal(quiet.On(day).Due, On(quiet, day).Due);
            Assert.Equal((told.On(day).Due, told.On(day).IsGateDue), (On(told, day).Due, On(told, day).IsGate));
        }
    }

    [Fact]
    public void The_interval_of_a_step_and_the_permit_name_the_same_day()
    {
        Story story = Story.Of(Every(14, null, null), recheck: Story.Day(60)).LogsEach(0, 30);

        Assert.Equal(new SignedRecheck(Story.Day(14), false, 14), On(story, 5));
        Assert.Equal(story.On(5).Due, On(story, 5).Due);
        Assert.Equal(story.On(20).Due, On(story, 20).Due);
    }

    [Theory]
    [InlineData(5, 45, null, null, 45)]
    [InlineData(30, 45, 30, null, 30)]
    [InlineData(30, 30, 45, null, 30)]
    [InlineData(30, null, 45, 10, 45)]
    [InlineData(30, null, null, 10, null)]
    public void The_interval_is_the_shortest_of_the_steps_the_horse_can_stand_in(
        int day,
        int? first,
        int? second,
        int? third,
        int? expected
    ) => Assert.Equal(expected, On(Story.Of(Every(first, second, third)), day).IntervalDays);

    [Fact]
    public void Steps_before_the_one_a_signature_placed_the_horse_in_are_passed()
    {
        PlanVersion plan = Every(20, 45, null);

        Assert.Equal(45, On(Story.Of(plan).Decides(DecisionKind.Advance, 10, new PlanPlace(1, 0)), 12).IntervalDays);
    }

    [Fact]
    public void A_plan_that_ended_asks_for_nothing() =>
        Assert.Equal(SignedRecheck.None, On(Story.Of(Every(20, 20, 20)).Decides(DecisionKind.Close, 10), 11));
}
