using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Tests.Exercise;

/// <summary>What was released is read only while it tells no more work than the permit of the day.</summary>
public sealed class ReleaseTests
{
    private static DateOnly Today => ExerciseHouse.Today;

    /// <summary>A horse in walk, whose vet held it today and released what to read.</summary>
    private static async Task<ExerciseHouse> ReleasedAsync(DecisionKind kind = DecisionKind.Hold)
    {
        ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
        Assert.True((await ReleaseAsync(at, (await at.DecideAsync(kind)).Value)).Succeeded);
        return at;
    }

    private static Task<Outcome<Saved>> ReleaseAsync(ExerciseHouse at, Saved decision) =>
        at
            .House.Get<ReleaseDecision>()
            .ExecuteAsync(
                at.House.Vet,
                new ReleaseDecisionInput(Guid.NewGuid(), decision.Id, decision.Version, ["She walks 20 minutes."], ["Walk 20 minutes."])
            );

    private static async Task AssertWithheldAsync(ExerciseHouse at, ReleaseStanding standing)
    {
        foreach (Actor reader in (Actor[])[at.Trainer, at.Owner])
        {
            YardRelease release = (await at.YardAsync(reader)).Release;
            Assert.Equal(standing, release.Standing);
            Assert.Empty(release.Sentences);
            Assert.Empty(release.Pictures);
            Assert.NotNull(release.At);
        }
    }

    [Fact]
    public async Task It_is_read_while_the_permit_is_what_was_signed_and_while_only_growth_is_held()
    {
        await using ExerciseHouse at = await ReleasedAsync();
        Assert.Equal(ReleaseStanding.Counts, (await at.YardAsync()).Release.Standing);

        for (int day = 1; day <= 3; day++)
        {
            at.House.Time.Advance(TimeSpan.FromDays(1));
            await at.LogAsync(new DayLog { Date = Today.AddDays(day), Done = new OutingMinutes(40) });
        }

        YardHorse horse = await at.YardAsync();
        Assert.Equal(["Walk 20 minutes."], horse.Release.Sentences);
        Assert.Equal(20, horse.Permit.Work.Outing.Walk);
    }

    [Fact]
    public async Task A_day_of_rest_withholds_nothing_because_it_was_signed_with_the_days_of_the_week()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        PlanStep first = ExerciseHouse.Plan.Steps[0] with { DaysAWeek = 1 };
        Assert.True((await at.SignAsync(ExerciseHouse.Plan with { Steps = [first, ExerciseHouse.Plan.Steps[1]] })).Succeeded);
        Assert.True((await ReleaseAsync(at, (await at.DecideAsync(DecisionKind.Hold)).Value)).Succeeded);
        // Today is a Tuesday: with its one day done, Wednesday is for rest.
        await at.LogAsync(new DayLog { Date = Today, Done = new OutingMinutes(20) });
        at.House.Time.Advance(TimeSpan.FromDays(1));

        YardHorse horse = await at.YardAsync();

        Assert.False(horse.Permit.Work.HasOuting);
        Assert.Contains(horse.Permit.Reasons, reason => reason.Code == PermitReasonCode.RestDay);
        Assert.Equal(["Walk 20 minutes."], horse.Release.Sentences);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_concern_or_a_sign_in_a_log_takes_it_from_the_pages_at_once(bool byLog)
    {
        await using ExerciseHouse at = await ReleasedAsync();
        _ = byLog ? (await at.LogAsync(new DayLog { Date = Today, Heat = SignGrade.Slight })).Value : (await at.ReportAsync()).Value;

        await AssertWithheldAsync(at, ReleaseStanding.NotToday);
    }

    [Fact]
    public async Task A_day_away_and_a_day_with_less_work_take_it_away_for_that_day()
    {
        await using ExerciseHouse at = await ReleasedAsync();
        Assert.True(
            (
                await at
                    .House.Get<LowerWork>()
                    .ExecuteAsync(
                        at.Trainer,
                        new LowerWorkInput(
                            Guid.NewGuid(),
                            at.Horse,
                            (await at.YardAsync()).Permit.SignedWork with
                            {
                                OutingsADay = 1,
                            },
                            Today,
                            Today,
                            "tired"
                        )
                    )
            ).Succeeded
        );
        await AssertWithheldAsync(at, ReleaseStanding.NotToday);
        at.House.Time.Advance(TimeSpan.FromDays(1));
        Assert.Equal(ReleaseStanding.Counts, (await at.YardAsync()).Release.Standing);

        Assert.True(
            (
                await at
                    .House.Get<PauseWork>()
                    .ExecuteAsync(at.Trainer, new PauseWorkInput(Guid.NewGuid(), at.Horse, Today.AddDays(1), Today.AddDays(1), null))
            ).Succeeded
        );
        await AssertWithheldAsync(at, ReleaseStanding.NotToday);
    }

    [Fact]
    public async Task A_recheck_that_was_missed_takes_it_away_with_the_work()
    {
        await using ExerciseHouse at = await ReleasedAsync();
        at.House.Time.Advance(TimeSpan.FromDays(60 + new PermitSettings().GraceDays + 1));

        Assert.False((await at.YardAsync()).Permit.Work.HasOuting);
        await AssertWithheldAsync(at, ReleaseStanding.NotToday);
    }

    [Theory]
    [InlineData(DecisionKind.Hold)]
    [InlineData(DecisionKind.Stop)]
    [InlineData(DecisionKind.Close)]
    public async Task A_decision_that_was_not_released_takes_the_earlier_words_away(DecisionKind next)
    {
        await using ExerciseHouse at = await ReleasedAsync();
        Assert.True((await at.DecideAsync(next)).Succeeded);

        await AssertWithheldAsync(at, ReleaseStanding.Over);
    }

    [Fact]
    public async Task A_plan_signed_afterwards_takes_it_away()
    {
        await using ExerciseHouse at = await ReleasedAsync();
        Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);

        await AssertWithheldAsync(at, ReleaseStanding.Over);
    }

    [Theory]
    [InlineData(DecisionKind.Stop)]
    [InlineData(DecisionKind.Pause)]
    [InlineData(DecisionKind.Close)]
    public async Task What_ends_the_work_is_read_although_no_work_is_permitted(DecisionKind kind)
    {
        await using ExerciseHouse at = await ReleasedAsync(kind);

        Assert.False((await at.YardAsync()).Permit.Work.HasOuting);
        Assert.Equal(ReleaseStanding.Counts, (await at.YardAsync()).Release.Standing);
    }

    [Fact]
    public async Task What_counts_from_a_later_day_is_not_read_before_it()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
        Saved decision = (
            await at.DecideAsync(DecisionKind.Hold, input => input with { Decision = input.Decision with { From = Today.AddDays(2) } })
        ).Value;
        Assert.True((await ReleaseAsync(at, decision)).Succeeded);

        await AssertWithheldAsync(at, ReleaseStanding.NotYet);
        Assert.Equal(Today.AddDays(2), (await at.YardAsync()).Release.From);
        at.House.Time.Advance(TimeSpan.FromDays(2));
        Assert.Equal(ReleaseStanding.Counts, (await at.YardAsync()).Release.Standing);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Only_the_last_signature_can_be_released(bool byPlan)
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
        Saved first = (await at.DecideAsync(DecisionKind.Hold)).Value;
        Outcome<Saved> later = byPlan ? await at.SignAsync(ExerciseHouse.Plan) : await at.DecideAsync(DecisionKind.Stop);
        Assert.True(later.Succeeded);

        Assert.Equal("release-of-earlier-signature", Assert.Single((await ReleaseAsync(at, first)).Problems).Code);
        Assert.Equal(ReleaseStanding.Nothing, (await at.YardAsync()).Release.Standing);
    }

    [Theory]
    [InlineData(-60, false)]
    [InlineData(-61, true)]
    public async Task A_log_of_long_ago_is_kept_and_asked_about(int days, bool isEarly)
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Outcome<LogAnswer> logged = await at.LogAsync(new DayLog { Date = Today.AddDays(days), Done = new OutingMinutes(10) });

        Assert.True(logged.Succeeded);
        Assert.Equal(isEarly, logged.Value.IsEarly);
    }
}
