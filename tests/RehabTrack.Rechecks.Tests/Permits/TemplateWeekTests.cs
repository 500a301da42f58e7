using System.Globalization;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Simulation.Permits;

namespace RehabTrack.Rechecks.Tests.Permits;

/// <summary>Every template, every week, against its source. Week n is day 7n to 7n + 6 of effective time; the gates are passed on the day.</summary>
public sealed class TemplateWeekTests
{
    /// <summary>From memory: Davis and Smith 2006. Walk and trot of each week of 0 to 32.</summary>
    private static readonly (int Walk, int Trot)[] Tendon =
    [
        (0, 0),
        (0, 0),
        (0, 0),
        (10, 0),
        (15, 0),
        (20, 0),
        (25, 0),
        (30, 0),
        (35, 0),
        (40, 0),
        .. Enumerable.Repeat((45, 0), 3),
        .. Enumerable.Repeat((40, 5), 4),
        .. Enumerable.Repeat((35, 10), 4),
        .. Enumerable.Repeat((30, 15), 4),
        .. Enumerable.Repeat((25, 20), 4),
        .. Enumerable.Repeat((20, 25), 4),
    ];

    public static TheoryData<int> TendonWeeks => [.. Enumerable.Range(0, 49)];

    [Theory]
    [MemberData(nameof(TendonWeeks))]
    public void Severe_tendon_week_by_week(int week)
    {
        PermitHistory history = Passed("sdft-severe", plan => plan).History;
        foreach (int day in new[] { 0, 3, 6 })
        {
            Work work = PermitReader.For(history, Story.Day(7 * week + day)).Work;
            (int walk, int trot) = week < Tendon.Length ? Tendon[week] : (0, 0);
            Assert.Equal(new OutingMinutes(walk, trot), work.Outing);
        }
    }

    // From memory: Davis & Smith 2006.
    [Theory]
    [InlineData(5, 20, 0)]
    [InlineData(9, 40, 0)]
    [InlineData(14, 40, 5)]
    [InlineData(22, 30, 15)]
    [InlineData(30, 20, 25)]
    public void Severe_tendon_worked_values(int week, int walk, int trot) =>
        Assert.Equal(new OutingMinutes(walk, trot), Passed("sdft-severe", plan => plan).On(7 * week).Work.Outing);

    [Fact]
    public void Every_row_of_weeks_13_to_32_totals_45() =>
        Assert.All(Enumerable.Range(13, 20), week => Assert.Equal(45, Passed("sdft-severe", plan => plan).On(7 * week).Work.Outing.Total));

    // Words without minutes, "45 in all": nothing until a vet fills in the row; then never more than 45.
    [Fact]
    public void Canter_weeks_permit_nothing_until_filled_in_and_45_at_most_after()
    {
        PlanVersion Filled(PlanVersion plan) =>
            plan with
            {
                Steps =
                [
                    .. plan.Steps.Select(step =>
                        step.Name == "slow canter, rising"
                            ? step with
                            {
                                Walk = new GaitRule(20),
                                Trot = new GaitRule(20),
                                Canter = new GaitRule(1, 2, 15),
                            }
                            : step
                    ),
                ],
            };

        Assert.Equal(Work.None, Passed("sdft-severe", plan => plan).On(7 * 33).Work);
        Assert.Contains(Passed("sdft-severe", plan => plan).On(7 * 33).Reasons, reason => reason.Code == PermitReasonCode.StepUnfilled);
        Assert.Equal(new OutingMinutes(20, 20, 1), Passed("sdft-severe", Filled).On(7 * 33).Work.Outing);
        Assert.Equal(new OutingMinutes(20, 20, 5), Passed("sdft-severe", Filled).On(7 * 38).Work.Outing);
    }

    public static TheoryData<int> ShockWaveWeeks => [.. Enumerable.Range(0, 31)];

    // FVMA 29: 20 min of walk for ten weeks; after k full weeks past the gate 2k min of trot, up to the ceiling of the vet.
    [Theory]
    [MemberData(nameof(ShockWaveWeeks))]
    public void Hind_proximal_with_shock_wave_week_by_week(int week)
    {
        PermitHistory history = Passed("suspensory-hind-proximal-shock-wave", WithCeiling).History;

        Assert.All(
            PermitReader.Over(history, Story.Day(7 * week), Story.Day((7 * week) + 6)),
            permit =>
                Assert.Equal((new OutingMinutes(20, Math.Clamp(2 * (week - 10), 0, 20)), 5), (permit.Work.Outing, permit.Work.DaysAWeek))
        );
    }

    [Theory]
    [InlineData(70, 20)]
    [InlineData(84, 20)]
    [InlineData(85, 0)]
    [InlineData(105, 0)]
    [InlineData(400, 0)]
    public void A_gate_that_is_not_passed_gives_no_trot_and_lapses_after_the_grace(int day, int walk) =>
        Assert.Equal(
            new OutingMinutes(walk),
            Story.Of(WithCeiling(Plan("suspensory-hind-proximal-shock-wave"))).LogsEach(0, 400).On(day).Work.Outing
        );

    // Adams & Stashak 618, FVMA 29, ECM 353, ECM 349: words without minutes permit nothing, in any week, gates passed or not.
    [Theory]
    [InlineData("suspensory-proximal-general")]
    [InlineData("suspensory-hind-proximal-surgery")]
    [InlineData("suspensory-body")]
    [InlineData("suspensory-origin-avulsion")]
    public void Words_without_minutes_permit_no_outing_in_any_week(string name)
    {
        PermitHistory history = Passed(name, plan => plan).History;

        Assert.All(PermitReader.Over(history, Story.Day(0), Story.Day(300)), permit => Assert.False(permit.Work.HasOuting));
    }

    // The same four with 20 min of walk and 10 of trot filled in: each step lasts its shortest length and ends at its gate.
    [Theory]
    [InlineData("suspensory-proximal-general", "0:20/0 56:20/10 112:20/10")]
    [InlineData("suspensory-hind-proximal-surgery", "0:0/0 14:20/0")]
    [InlineData("suspensory-body", "0:20/0 28:20/10 112:20/10")]
    [InlineData("suspensory-origin-avulsion", "0:0/0 21:20/0 63:20/10")]
    public void Filled_in_by_the_vet_each_step_begins_on_its_day(string name, string expected)
    {
        PermitHistory history = Passed(name, Fill).History;
        (int Day, OutingMinutes Minutes)[] rows = [.. expected.Split(' ').Select(Row)];
        for (int index = 0; index < rows.Length; index++)
        {
            int last = index + 1 < rows.Length ? rows[index + 1].Day - 1 : rows[index].Day + 60;
            Assert.All(
                PermitReader.Over(history, Story.Day(rows[index].Day), Story.Day(last)),
                permit => Assert.Equal(rows[index].Minutes, permit.Work.Outing)
            );
        }
    }

    private static (int Day, OutingMinutes Minutes) Row(string text)
    {
        int[] numbers = [.. text.Split(':', '/').Select(number => int.Parse(number, CultureInfo.InvariantCulture))];
        return (numbers[0], new OutingMinutes(numbers[1], numbers[2]));
    }

    private static PlanVersion Fill(PlanVersion plan) =>
        plan with
        {
            Steps =
            [
                .. plan.Steps.Select(step =>
                    step with
                    {
                        Walk = step.Walk ?? new GaitRule(20),
                        Trot = step.Trot ?? new GaitRule(10),
                        Canter = step.Canter ?? new GaitRule(0),
                        Gallop = step.Gallop ?? new GaitRule(0),
                        OutingsADay = step.OutingsADay ?? 1,
                        DaysAWeek = step.DaysAWeek ?? 7,
                        Modes = step.Modes == WorkModes.None ? WorkModes.InHand : step.Modes,
                    }
                ),
            ],
        };

    private static PlanVersion Plan(string name) => PlanTemplates.Find(name)!.ToPlan("a", 1);

    private static PlanVersion WithCeiling(PlanVersion plan) =>
        plan with
        {
            Steps = [plan.Steps[0], plan.Steps[1] with { Trot = plan.Steps[1].Trot! with { Ceiling = 20 } }],
        };

    /// <summary>The plan signed on day 0, logged every day, each gate passed by an examination and an advance on the day it is due.</summary>
    private static Story Passed(string name, Func<PlanVersion, PlanVersion> change)
    {
        PlanVersion plan = change(Plan(name));
        Story story = Story.Of(plan);
        int day = 0;
        for (int step = 0; step < plan.Steps.Count; step++)
        {
            story.LogsEach(day, day + plan.Steps[step].ShortestDays - 1);
            day += plan.Steps[step].ShortestDays;
            if (plan.Steps[step].Gate is not null)
            {
                story.Examines(day).Decides(DecisionKind.Advance, day, new PlanPlace(step + 1, 0));
            }
        }

        return story.LogsEach(day, day + 120);
    }
}
