using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Room;
using RehabTrack.Records.Shares;
using RehabTrack.Records.Tests.Bookings;

namespace RehabTrack.Records.Tests.Exercise;

/// <summary>How much can be written from outside within an hour.</summary>
public sealed class OutsideLimitsTests
{
    private static readonly ShareSettings Settings = new();
    private static readonly DayLog Sign = new() { Date = ExerciseHouse.Today, Heat = SignGrade.Slight };

    [Fact]
    public async Task Concerns_are_taken_up_to_the_number_of_an_hour_one_more_is_told_to_call_and_leaves_no_line()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        for (int number = 0; number < Settings.ConcernsPerHour; number++)
        {
            Assert.Empty((await at.ReportAsync()).Problems);
        }

        Outcome<LogAnswer> refused = await at.ReportAsync();
        Outcome<LogAnswer> sign = await at.LogAsync(Sign);

        Assert.Equal(("too-many-concerns", "too-many-concerns"), (refused.Codes(), sign.Codes()));
        Assert.Equal(Settings.ConcernsPerHour, await CountAsync(at));
        // The horse is guarded by the first of them, the practice is not held back, nor is somebody else.
        Assert.NotNull((await at.YardAsync()).Concern);
        Assert.Empty((await at.ReportAsync(at.House.Vet)).Problems);
        Assert.Empty((await at.ReportAsync(at.Owner)).Problems);
        at.House.Time.Advance(TimeSpan.FromHours(1));
        Assert.Empty((await at.ReportAsync()).Problems);
    }

    [Fact]
    public async Task A_repeat_of_a_concern_that_was_taken_is_answered_also_beyond_the_number()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        ReportConcernInput first = new(Guid.NewGuid(), at.Horse, "warm");
        ReportConcern report = at.House.Get<ReportConcern>();
        await report.ExecuteAsync(at.Trainer, first);
        for (int number = 0; number < Settings.ConcernsPerHour; number++)
        {
            await at.ReportAsync();
        }

        Assert.True((await report.ExecuteAsync(at.Trainer, first)).Succeeded);
        Assert.Equal(Settings.ConcernsPerHour, await CountAsync(at));
    }

    [Fact]
    public async Task Lines_are_taken_up_to_the_number_of_an_hour_and_a_concern_beyond_it_all_the_same()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        for (int number = 0; number < Settings.LinesPerHour; number++)
        {
            Assert.Empty((await at.LogAsync(Day(number))).Problems);
        }

        Outcome<LogAnswer> log = await at.LogAsync(Day(0));
        Outcome<Saved> away = await at
            .House.Get<PauseWork>()
            .ExecuteAsync(at.Trainer, new PauseWorkInput(Guid.NewGuid(), at.Horse, ExerciseHouse.Today, null, null));
        Outcome<Saved> less = await at
            .House.Get<LowerWork>()
            .ExecuteAsync(at.Trainer, new LowerWorkInput(Guid.NewGuid(), at.Horse, Work.None, ExerciseHouse.Today, null, null));

        Assert.Equal(("too-many-lines", "too-many-lines", "too-many-lines"), (log.Codes(), away.Codes(), less.Codes()));
        Assert.Empty((await at.LogAsync(Sign)).Problems);
        Assert.Empty((await at.ReportAsync()).Problems);
    }

    private static DayLog Day(int back) => new() { Date = ExerciseHouse.Today.AddDays(-back), Done = new OutingMinutes(10) };

    private static Task<int> CountAsync(ExerciseHouse at) => at.House.LookAsync(records => records.Concerns.CountAsync());
}
