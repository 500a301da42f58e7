using CsCheck;
using RehabTrack.Rechecks.Schedule;

namespace RehabTrack.Rechecks.Tests.Schedule;

public sealed class RecheckDueTests
{
    private static readonly DateOnly Last = new(2026, 3, 1);
    private static readonly ScheduleSettings Settings = new() { IntervalDays = 60, SoonDays = 14 };

    [Theory]
    [InlineData(0, RecheckState.NotDue, 60)]
    [InlineData(45, RecheckState.NotDue, 15)]
    [InlineData(46, RecheckState.Soon, 14)]
    [InlineData(59, RecheckState.Soon, 1)]
    [InlineData(60, RecheckState.Due, 0)]
    [InlineData(61, RecheckState.Overdue, -1)]
    public void The_state_follows_the_day_asked_about(int day, RecheckState state, int left) =>
        Assert.Equal(new RecheckDue(new DateOnly(2026, 4, 30), state, left), RecheckDue.Of(Last, Settings, Last.AddDays(day)));

    [Fact]
    public void Nothing_signed_is_nothing_due() =>
        Assert.Equal(new RecheckDue(null, RecheckState.NotScheduled, null), RecheckDue.Of(null, Settings, Last));

    [Fact]
    public void The_usual_rhythm_is_sixty_days() =>
        Assert.Equal(Last.AddDays(60), RecheckDue.Of(Last, new ScheduleSettings(), Last).DueDate);

    [Theory]
    [InlineData(null, 60, DueBy.Interval)]
    [InlineData(42, 42, DueBy.Gate)]
    [InlineData(60, 60, DueBy.Interval)]
    [InlineData(90, 60, DueBy.Interval)]
    [InlineData(0, 60, DueBy.Interval)]
    [InlineData(-5, 60, DueBy.Interval)]
    public void The_earlier_of_gate_and_interval_counts_and_a_gate_that_was_examined_does_not(int? gate, int due, DueBy by)
    {
        RecheckDue read = RecheckDue.Of(Last, Settings, Last, gate is { } days ? Last.AddDays(days) : null);

        Assert.Equal((Last.AddDays(due), by, due), (read.DueDate, read.By, read.DaysLeft));
    }

    [Fact]
    public void A_gate_is_due_although_nothing_was_signed_here()
    {
        RecheckDue read = RecheckDue.Of(null, Settings, Last, Last.AddDays(-2));

        Assert.Equal(new RecheckDue(Last.AddDays(-2), RecheckState.Overdue, -2, DueBy.Gate), read);
    }

    [Fact]
    public void The_due_date_is_never_after_gate_or_interval_and_is_one_of_them() =>
        Gen.Select(Gen.Int[0, 400], Gen.Int[1, 400], Gen.Int[0, 400])
            .Sample(
                (gate, interval, day) =>
                {
                    RecheckDue read = RecheckDue.Of(Last, Settings with { IntervalDays = interval }, Last.AddDays(day), Last.AddDays(gate));
                    int expected = gate == 0 ? interval : Math.Min(gate, interval);
                    Assert.Equal(Last.AddDays(expected), read.DueDate);
                    Assert.Equal(expected - day, read.DaysLeft);
                },
                seed: "0000KT2kSG20"
            );

    [Theory]
    [InlineData(50, DueBy.Signature, 50)]
    [InlineData(60, DueBy.Interval, 60)]
    [InlineData(0, DueBy.Interval, 60)]
    public void A_day_that_a_vet_signed_is_held_against_the_interval_like_a_gate(int signed, DueBy by, int due)
    {
        RecheckDue read = RecheckDue.Of(Last, Settings, Last, Last.AddDays(signed), isGate: false);

        Assert.Equal((Last.AddDays(due), by), (read.DueDate, read.By));
    }

    [Fact]
    public void The_end_of_the_calendar_is_the_latest_due_date() =>
        Assert.Equal(DateOnly.MaxValue, RecheckDue.Of(DateOnly.MaxValue.AddDays(-3), Settings, Last).DueDate);

    [Theory]
    [InlineData(null, null, null, 60)]
    [InlineData(45, null, null, 45)]
    [InlineData(45, 90, null, 90)]
    [InlineData(45, null, 70, 70)]
    [InlineData(45, 90, 70, 70)]
    [InlineData(45, 30, 70, 30)]
    public void The_interval_of_the_horse_goes_before_the_house_rule_and_the_shorter_of_case_and_step_counts(
        int? practice,
        int? ofCase,
        int? step,
        int days
    ) => Assert.Equal(days, Settings.For(practice, ofCase, step).IntervalDays);
}
