using Microsoft.Data.Sqlite;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Exercise;

/// <summary>What people get wrong, asked of the use case that must say so.</summary>
public sealed class BadInputTests
{
    public static TheoryData<string, string> WrongSteps =>
        new()
        {
            { "steps[0].length", "step-length-out-of-range" },
            { "steps[0].walk", "minutes-over-a-day" },
            { "steps[0]", "outings-over-a-day" },
            { "steps[1].gate", "gate-after-last-step" },
        };

    private static PlanVersion Wrong(string code)
    {
        PlanStep first = ExerciseHouse.Plan.Steps[0];
        PlanStep last = ExerciseHouse.Plan.Steps[1];
        return ExerciseHouse.Plan with
        {
            Steps = code switch
            {
                "step-length-out-of-range" => [first with { ShortestDays = 0 }, last],
                "minutes-over-a-day" => [first with { Walk = new GaitRule(1441) }, last],
                "outings-over-a-day" => [first with { OutingsADay = 73 }, last],
                _ => [first, last with { Gate = new Gate("", []) }],
            },
        };
    }

    [Theory]
    [MemberData(nameof(WrongSteps))]
    public async Task A_plan_with_an_impossible_step_is_not_signed_and_stays_as_it_was_typed(string field, string code)
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();

        Outcome<Saved> refused = await at.SignAsync(Wrong(code));

        Assert.Equal([(field, code)], refused.Problems.Select(problem => (problem.Field, problem.Code)));
        ExerciseView view = await at.ViewAsync();
        Assert.Null(view.Plan);
        Assert.Equivalent(Wrong(code).Steps, view.Draft!.Plan.Steps);
    }

    /// <summary>A step has a length and no dates of its own: whatever the lengths, each day of effective time belongs to one step.</summary>
    [Theory]
    [InlineData(1, 1)]
    [InlineData(28, 42)]
    [InlineData(7, 1000)]
    public void Steps_follow_one_another_and_never_overlap(int first, int second)
    {
        PlanVersion plan = ExerciseHouse.Plan with
        {
            Steps =
            [
                ExerciseHouse.Plan.Steps[0] with
                {
                    ShortestDays = first,
                    Gate = null,
                },
                ExerciseHouse.Plan.Steps[1] with
                {
                    ShortestDays = second,
                },
            ],
        };
        PlanPlace place = PlanPlace.Start;
        for (int day = 0; day < first; day++)
        {
            Assert.Equal(new PlanPlace(0, day), place);
            place = PlanRows.Next(plan, place);
        }

        Assert.Equal(new PlanPlace(1, 0), place);
    }

    [Fact]
    public async Task Of_two_signatures_at_the_same_moment_one_counts_and_the_other_is_told_so()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        await at.SignAsync(ExerciseHouse.Plan);
        int seen = (await at.ViewAsync()).LastNumber;
        Task<Outcome<Saved>> Sign(DecisionKind kind) => Task.Run(() => at.DecideAsync(kind, input => input with { SeenNumber = seen }));

        Outcome<Saved>[] outcomes = await Task.WhenAll(Sign(DecisionKind.Hold), Sign(DecisionKind.Stop));

        Outcome<Saved> refused = Assert.Single(outcomes, outcome => !outcome.Succeeded);
        Assert.Equal("exercise-changed-since-seen", Assert.Single(refused.Problems).Code);
        Assert.Single((await at.ViewAsync()).Decisions);
    }

    [Fact]
    public async Task A_concern_and_a_decision_whose_line_came_after_the_lines_were_read_wait_for_the_next_look()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        await at.SignAsync(ExerciseHouse.Plan);
        await at.DecideAsync(DecisionKind.Hold);
        await at.ReportAsync();
        // What another person writes between two readings looks like a row beside a line that is not there: here lines of another horse.
        Guid other = (await at.House.HorseAsync("Bracken")).Id;
        await using (SqliteConnection connection = new($"Data Source={at.House.Database}"))
        {
            await connection.OpenAsync();
            await using SqliteCommand command = connection.CreateCommand();
            command.CommandText = """
                DROP TRIGGER "ExerciseEntry_is_not_updated";
                UPDATE ExerciseEntry SET HorseId = $other WHERE Kind <> 'PlanSigned';
                """;
            command.Parameters.AddWithValue("$other", other.ToString().ToUpperInvariant());
            Assert.Equal(2, await command.ExecuteNonQueryAsync());
        }

        ExerciseView view = await at.ViewAsync();

        Assert.Equal((1, 0, 0), (view.Lines.Count, view.Decisions.Count, view.Concerns.Count));
        Assert.Null((await at.YardAsync()).Concern);
    }

    /// <summary>
    /// Clocks in Vienna go forward on 28 March 2027. The plan counts from 25 March; its second week begins with 1 April, at midnight of the
    /// practice, which is 22:00 UTC the evening before.
    /// </summary>
    [Fact]
    public async Task A_week_is_seven_days_of_the_practice_across_the_change_of_the_clocks()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        PracticeView practice = (await at.House.Get<GetPractice>().ExecuteAsync(at.House.Vet, NoInput.Value)).Value;
        Assert.Equal("Europe/Vienna", practice.TimeZone);
        DateOnly first = new(2027, 3, 25);
        at.House.Time.SetUtcNow(new DateTimeOffset(2027, 3, 25, 10, 0, 0, TimeSpan.Zero));
        PlanStep step = ExerciseHouse.Plan.Steps[0] with { Walk = new GaitRule(10, 5, 30) };
        Assert.True((await at.SignAsync(ExerciseHouse.Plan with { Steps = [step, ExerciseHouse.Plan.Steps[1]] })).Succeeded);
        for (int day = 0; day < 7; day++)
        {
            Assert.True((await at.LogAsync(new DayLog { Date = first.AddDays(day), Done = new OutingMinutes(20) })).Succeeded);
            at.House.Time.Advance(TimeSpan.FromDays(day < 6 ? 1 : 0));
        }

        at.House.Time.SetUtcNow(new DateTimeOffset(2027, 3, 31, 21, 59, 59, TimeSpan.Zero));
        Assert.Equal((new DateOnly(2027, 3, 31), 10), await PermittedAsync(at));
        Assert.Equal("date-in-future", Code(await at.LogAsync(new DayLog { Date = new DateOnly(2027, 4, 1) })));

        at.House.Time.SetUtcNow(new DateTimeOffset(2027, 3, 31, 22, 0, 0, TimeSpan.Zero));
        Assert.Equal((new DateOnly(2027, 4, 1), 15), await PermittedAsync(at));
        Assert.True((await at.LogAsync(new DayLog { Date = new DateOnly(2027, 4, 1) })).Succeeded);
    }

    private static async Task<(DateOnly Day, int Walk)> PermittedAsync(ExerciseHouse at)
    {
        Permit permit = (await at.ViewAsync()).Today;
        return (permit.Date, permit.Work.Outing.Walk);
    }

    private static string Code<T>(Outcome<T> outcome) => Assert.Single(outcome.Problems).Code;
}
