using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Simulation.Permits;

namespace RehabTrack.Rechecks.Tests.Permits;

public sealed class AdherenceTests
{
    /// <summary>A Monday.</summary>
    private static readonly DateOnly Monday = Story.Day0;

    private static readonly Work Permit = Plans.Walk(20, 5) with { DaysAWeek = 5, Circles = Circles.Large, Turnout = Turnout.SmallPaddock };

    private static DayLog Log(int day, int walk, int trot = 0) =>
        new()
        {
            Date = Monday.AddDays(day),
            Done = new OutingMinutes(walk, trot),
            Modes = WorkModes.InHand,
            Surfaces = Surfaces.FirmEven,
        };

    private static DayAdherence Day(params DayLog[] logs) => AdherenceReader.Of(Monday, logs, Permit);

    private static WeekAdherence Week(Work permit, params DayLog[] logs) =>
        Assert.Single(
            AdherenceReader.ByWeek(logs, Enumerable.Range(0, 7).ToDictionary(Monday.AddDays, _ => permit), Monday, Monday.AddDays(6))
        );

    [Theory]
    [InlineData(20, 5, AdherenceStanding.Within)]
    [InlineData(20, 0, AdherenceStanding.Within)]
    [InlineData(19, 0, AdherenceStanding.Under)]
    [InlineData(0, 0, AdherenceStanding.Under)]
    [InlineData(21, 0, AdherenceStanding.Over)]
    [InlineData(0, 6, AdherenceStanding.Over)]
    public void A_day_stands_by_its_minutes_gait_by_gait(int walk, int trot, AdherenceStanding standing) =>
        Assert.Equal(standing, Day(Log(0, walk, trot)).Standing);

    [Fact]
    public void Trot_beyond_the_permit_is_not_made_up_for_by_less_walk()
    {
        DayAdherence day = Day(Log(0, 5, 12));

        Assert.Equal(new OutingMinutes(0, 7), day.Beyond);
        Assert.Equal([OverKind.Minutes], day.Over);
    }

    [Fact]
    public void Several_logs_of_a_day_add_up()
    {
        DayAdherence day = Day(Log(0, 10), Log(0, 15));

        Assert.Equal(new OutingMinutes(25), day.Done);
        Assert.Equal([OverKind.Minutes, OverKind.Outings], day.Over);
    }

    [Fact]
    public void How_and_where_can_be_over_within_the_minutes()
    {
        Assert.Equal([OverKind.Mode], Day(Log(0, 20, 5) with { Modes = WorkModes.Ridden }).Over);
        Assert.Equal([OverKind.Circles], Day(Log(0, 20, 5) with { Circles = Circles.Any }).Over);
        Assert.Equal([OverKind.Surface], Day(Log(0, 20, 5) with { Surfaces = Surfaces.Soft }).Over);
        Assert.Equal([OverKind.Turnout], Day(Log(0, 20, 5) with { Turnout = Turnout.Field }).Over);
        Assert.Equal([OverKind.Outings], Day(Log(0, 20, 5) with { Outings = 2 }).Over);
        Assert.Equal([], Day(Log(0, 20, 5) with { Circles = Circles.Large, Turnout = Turnout.SmallPaddock, Outings = 1 }).Over);
    }

    [Fact]
    public void Work_on_a_day_without_permitted_work_is_over()
    {
        DayAdherence day = AdherenceReader.Of(Monday, [Log(0, 5)], Work.None);

        Assert.Equal(AdherenceStanding.Over, day.Standing);
        Assert.Equal([OverKind.Minutes, OverKind.Outings, OverKind.Mode, OverKind.Surface], day.Over);
    }

    [Fact]
    public void A_day_in_the_box_with_nothing_permitted_is_as_permitted() =>
        Assert.Equal(AdherenceStanding.Within, AdherenceReader.Of(Monday, [Log(0, 0) with { Modes = WorkModes.None }], Work.None).Standing);

    [Fact]
    public void No_log_and_no_permit_are_told_apart()
    {
        Assert.Equal(AdherenceStanding.NoLog, Day().Standing);
        Assert.Equal(AdherenceStanding.NoPermit, AdherenceReader.Of(Monday, [Log(0, 90)], null).Standing);
        Assert.Null(AdherenceReader.Of(Monday, [Log(0, 90)], null).Permitted);
    }

    [Fact]
    public void A_week_counts_the_days_that_were_permitted()
    {
        WeekAdherence five = Week(Permit, [.. Enumerable.Range(0, 5).Select(day => Log(day, 20, 5))]);
        WeekAdherence six = Week(Permit, [.. Enumerable.Range(0, 6).Select(day => Log(day, 20, 5))]);
        WeekAdherence three = Week(Permit, [.. Enumerable.Range(0, 3).Select(day => Log(day, 20, 5))]);

        Assert.Equal((AdherenceStanding.Within, 125, 125), (five.Standing, five.PermittedMinutes, five.Done.Total));
        Assert.Equal(AdherenceStanding.Over, six.Standing);
        Assert.Equal([OverKind.Days], six.Over);
        Assert.Equal([AdherenceStanding.Within, AdherenceStanding.Over], [six.Days[4].Standing, six.Days[5].Standing]);
        Assert.Equal([OverKind.Days], six.Days[5].Over);
        Assert.Equal(AdherenceStanding.Under, three.Standing);
        Assert.Equal(AdherenceStanding.NoLog, Week(Permit).Standing);
    }

    [Fact]
    public void The_sixth_day_of_five_is_over_in_all_its_minutes()
    {
        Story story = Story.Of(Plans.Simple with { Steps = [Plans.Step("walk", 28, new GaitRule(20), 0) with { DaysAWeek = 5 }] });
        for (int day = 0; day < 6; day++)
        {
            story.Does(day, new OutingMinutes(20));
        }

        WeekAdherence week = Assert.Single(
            AdherenceReader.ByWeek(
                story.History.Entries.OfType<DayLogged>().Select(entry => entry.Log),
                AdherenceReader.Permitted(story.History, [], Monday, Monday.AddDays(6)),
                Monday,
                Monday.AddDays(6)
            )
        );

        Assert.Equal((6, 100, 120), (week.DaysWorked, week.PermittedMinutes, week.Done.Total));
        Assert.Equal(AdherenceStanding.Within, week.Days[4].Standing);
        Assert.Equal(20, week.Days[5].Beyond.Total);
        Assert.Contains(OverKind.Days, week.Days[5].Over);
        Assert.Equal(AdherenceStanding.NoLog, week.Days[6].Standing);
    }

    [Fact]
    public void One_day_over_makes_the_week_over_even_when_the_sum_is_less() =>
        Assert.Equal(AdherenceStanding.Over, Week(Permit, Log(2, 20, 15)).Standing);

    [Fact]
    public void Weeks_begin_on_a_monday_and_each_day_is_held_against_its_own_permit()
    {
        Dictionary<DateOnly, Work> permits = new() { [Monday.AddDays(6)] = Plans.Walk(10), [Monday.AddDays(7)] = Plans.Walk(30) };

        IReadOnlyList<WeekAdherence> weeks = AdherenceReader.ByWeek(
            [Log(6, 30), Log(7, 30)],
            permits,
            Monday.AddDays(6),
            Monday.AddDays(7)
        );

        Assert.Equal([Monday.AddDays(6), Monday.AddDays(7)], weeks.Select(week => week.From));
        Assert.Equal([AdherenceStanding.Over, AdherenceStanding.Within], weeks.Select(week => week.Standing));
    }

    [Fact]
    public void What_the_page_showed_on_a_day_stands_and_the_other_days_are_as_the_history_says()
    {
        Story story = Story.Of(Plans.Simple with { Steps = [Plans.Step("walk", 28, new GaitRule(20), 0)] });
        IReadOnlyDictionary<DateOnly, Work> permitted = AdherenceReader.Permitted(
            story.History,
            [KeyValuePair.Create(Story.Day(2), Plans.Walk(35))],
            Story.Day(-1),
            Story.Day(3)
        );

        Assert.Equal([Story.Day(0), Story.Day(1), Story.Day(2), Story.Day(3)], permitted.Keys.Order());
        Assert.Equal([20, 20, 35, 20], permitted.OrderBy(day => day.Key).Select(day => day.Value.Outing.Walk));
    }
}
