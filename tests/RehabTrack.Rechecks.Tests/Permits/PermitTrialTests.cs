using CsCheck;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Simulation.Permits;

namespace RehabTrack.Rechecks.Tests.Permits;

/// <summary>
/// Made-up histories, held against the naive model and against the rules that no history may break. The long run of 100,000 is a command
/// of the simulation.
/// </summary>
public sealed class PermitTrialTests
{
    private static readonly Gen<Work> Works =
        from walk in Gen.Int[0, 30]
        from trot in Gen.Int[0, 10]
        from outings in Gen.Int[0, 3]
        from days in Gen.Int[0, 7]
        from modes in Gen.Int[0, 7]
        from circles in Gen.Int[0, 2]
        from surfaces in Gen.Int[0, 15]
        from turnout in Gen.Int[0, 2]
        select new Work
        {
            Outing = new OutingMinutes(walk, trot),
            OutingsADay = outings,
            DaysAWeek = days,
            Modes = (WorkModes)modes,
            Circles = (Circles)circles,
            Surfaces = (Surfaces)surfaces,
            Turnout = (Turnout)turnout,
        }.Settled();

    [Fact]
    public void No_made_up_history_breaks_a_rule_or_differs_from_the_model() => Assert.Equal([], PermitTrials.Run(1_000_000, 250));

    // Seeds of a long run, with what was added to the histories since: two plans signed on one day, neither as an advance; a plan begun on the day on which the one before it ended.
    [Theory]
    [InlineData(20135)]
    [InlineData(20363)]
    [InlineData(28190)]
    [InlineData(4714)]
    [InlineData(5976)]
    [InlineData(66928)]
    [InlineData(7268)]
    [InlineData(83304)]
    [InlineData(86671)]
    public void A_history_on_which_function_and_model_once_differed_is_settled(int seed) => Assert.Null(PermitTrials.Try(seed));

    [Fact]
    public void The_histories_reach_every_state_and_nearly_every_reason()
    {
        HashSet<PermitState> states = [];
        HashSet<PermitReasonCode> reasons = [];
        for (int seed = 0; seed < 300; seed++)
        {
            PermitHistory history = new RandomHistories(new Random(seed)).Next();
            foreach (Permit permit in PermitReader.Over(history, Story.Day(0), Story.Day(RandomHistories.LastDay)))
            {
                states.Add(permit.State);
                reasons.UnionWith(permit.Reasons.Select(reason => reason.Code));
            }
        }

        Assert.Equal(Enum.GetValues<PermitState>(), states.Order());
        Assert.Equal(Enum.GetValues<PermitReasonCode>(), reasons.Order());
    }

    [Fact]
    public void The_trials_notice_an_entry_that_raises()
    {
        // A clean log entered in time lets signed growth go on: the one entry without a signature that may raise, so it must be seen.
        PermitHistory history = Story.Of(Plans.Simple).LogsEach(0, 5).History;
        DayLogged log = new()
        {
            Order = 1000,
            RecordedOn = Story.Day(12),
            Log = new DayLog { Date = Story.Day(12) },
        };

        Assert.NotNull(PermitTrials.Raised(history, log));
    }

    [Fact]
    public void The_least_of_two_works_is_within_both_and_nothing_larger_is() =>
        Gen.Select(Works, Works, Works)
            .Sample(
                (one, other, third) =>
                {
                    Work least = Work.Least(one, other);
                    return least.IsWithin(one)
                        && least.IsWithin(other)
                        && Work.Least(other, one) == least
                        && (!(third.IsWithin(one) && third.IsWithin(other)) || third.IsWithin(least));
                },
                iter: 20_000,
                seed: "0000KDbUPzK6"
            );

    [Fact]
    public void Caps_lower_and_never_raise_and_are_kept() =>
        Gen.Select(Works, Gen.Int[0, 60], Gen.Int[0, 90], Gen.Int[0, 300])
            .Sample(
                (work, outing, day, week) =>
                {
                    Work capped = new PlanCaps(outing, day, week).On(work);
                    return capped.IsWithin(work)
                        && capped.Outing.Total <= outing
                        && capped.Day.Total <= day
                        && capped.DaysAWeek * capped.Day.Total <= week;
                },
                iter: 20_000,
                seed: "0000KDbUPzK6"
            );

    [Fact]
    public void A_log_each_day_gives_the_most_that_logs_can_give() =>
        Gen.Int[0, 5000]
            .Sample(
                seed =>
                {
                    PermitHistory history = new RandomHistories(new Random(seed)).Next();
                    long order = 100_000;
                    PermitHistory full = new([
                        .. history.Entries,
                        .. Enumerable
                            .Range(0, RandomHistories.LastDay)
                            .Select(day => new DayLogged
                            {
                                Order = order++,
                                RecordedOn = Story.Day(day),
                                Log = new DayLog { Date = Story.Day(day) },
                            }),
                    ]);
                    return PermitReader
                        .Over(history, Story.Day(0), Story.Day(RandomHistories.LastDay))
                        .Zip(PermitReader.Over(full, Story.Day(0), Story.Day(RandomHistories.LastDay)))
                        // What a week has left is cut from the faster gait first: more walk may leave less trot, and never fewer minutes.
                        .All(pair =>
                            pair.First.BeforeWeek.IsWithin(pair.Second.BeforeWeek)
                            && pair.First.Work.Day.Total <= pair.Second.Work.Day.Total
                        );
                },
                iter: 60,
                seed: "0000KDbUPzK6"
            );
}
