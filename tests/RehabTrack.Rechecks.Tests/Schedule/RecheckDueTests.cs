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
}
