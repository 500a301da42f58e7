using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Schedule;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Overview;
using RehabTrack.Records.Reminders;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.Bookings;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Exercise;

/// <summary>
/// The next recheck is the earlier of gate and interval, wherever it is shown. The horse is examined and its plan signed on 24 November
/// 2026; the gate waits after 28 days, on 22 December; the interval of 60 days ends on 23 January 2027.
/// </summary>
public sealed class SignedRechecksTests
{
    private static readonly DateOnly Gate = new(2026, 12, 22);
    private static readonly DateOnly IntervalEnds = new(2027, 1, 23);

    [Fact]
    public async Task A_gate_before_the_interval_ends_sets_the_date_on_board_letter_horse_case_and_start_page()
    {
        await using ExerciseHouse house = await ExaminedAsync();
        BoardRow before = await house.House.RowAsync(house.Case);
        Assert.Equal((IntervalEnds, DueBy.Interval), (before.Due.DueDate, before.Due.By));

        await house.SignAsync(ExerciseHouse.Plan);

        BoardRow row = await house.House.RowAsync(house.Case);
        Assert.Equal((Gate, DueBy.Gate, 28), (row.Due.DueDate, row.Due.By, row.Due.DaysLeft));
        ReminderLetter letter = (await house.House.Get<GetReminder>().ExecuteAsync(house.House.Vet, house.Case)).Value;
        Assert.Equal((Gate, DueBy.Gate), (letter.Due.DueDate, letter.Due.By));
        HorseView horse = (await house.House.Get<GetHorse>().ExecuteAsync(house.House.Vet, house.Horse)).Value;
        Assert.Equal((Gate, DueBy.Gate), (horse.Cases[0].Summary!.DueOn, horse.Cases[0].Summary!.DueBy));
        CaseView injury = (await house.House.Get<GetCase>().ExecuteAsync(house.House.Vet, house.Case)).Value;
        Assert.Equal(Gate, injury.Summary!.DueOn);
        Assert.Empty((await OverviewAsync(house)).Soon);

        house.House.Time.Advance(TimeSpan.FromDays(14));
        Assert.Equal(Gate, Assert.Single((await OverviewAsync(house)).Soon).Case.Summary!.DueOn);
        Assert.Equal(RecheckStanding.Soon, Assert.Single((await house.House.BoardAsync()).Rows).Standing);

        house.House.Time.Advance(TimeSpan.FromDays(15));
        OverviewView late = await OverviewAsync(house);
        Assert.Equal((1, 0), (late.OverdueCount, late.SoonCount));
        Assert.Equal(RecheckStanding.Overdue, Assert.Single((await house.House.BoardAsync()).Rows).Standing);
    }

    [Fact]
    public async Task A_day_that_the_vet_signed_before_the_gate_sets_the_date()
    {
        await using ExerciseHouse house = await ExaminedAsync();
        await house.SignAsync(ExerciseHouse.Plan, input => input with { RecheckDate = ExerciseHouse.Today.AddDays(21) });

        RecheckDue due = (await house.House.RowAsync(house.Case)).Due;

        Assert.Equal((ExerciseHouse.Today.AddDays(21), DueBy.Signature), (due.DueDate, due.By));
    }

    [Theory]
    [InlineData(null, null, "2026-12-22", DueBy.Gate, 60)]
    [InlineData(14, null, "2026-12-08", DueBy.Interval, 14)]
    [InlineData(14, 10, "2026-12-04", DueBy.Interval, 10)]
    [InlineData(14, 90, "2026-12-08", DueBy.Interval, 14)]
    [InlineData(null, 10, "2026-12-04", DueBy.Interval, 10)]
    public async Task The_shorter_interval_of_step_and_case_is_held_against_the_gate(
        int? ofStep,
        int? ofCase,
        string expected,
        DueBy by,
        int interval
    )
    {
        await using ExerciseHouse house = await ExaminedAsync();
        PlanVersion plan = ExerciseHouse.Plan;
        await house.SignAsync(plan with { Steps = [plan.Steps[0] with { RecheckIntervalDays = ofStep }, plan.Steps[1]] });
        BoardRow before = await house.House.RowAsync(house.Case);
        await house
            .House.Get<SetInterval>()
            .ExecuteAsync(house.House.Vet, new SetIntervalInput(Guid.NewGuid(), house.Case, before.CaseVersion, ofCase));

        BoardRow row = await house.House.RowAsync(house.Case);

        Assert.Equal(
            (DateOnly.ParseExact(expected, "yyyy-MM-dd", null), by, interval),
            (row.Due.DueDate!.Value, row.Due.By, row.IntervalDays)
        );
    }

    [Fact]
    public async Task A_recheck_booked_after_the_gate_is_booked_with_a_caution()
    {
        await using ExerciseHouse house = await ExaminedAsync();
        await house.SignAsync(ExerciseHouse.Plan);

        Outcome<Saved> late = await house.House.BookAsync(house.Case, 29);

        Assert.Equal(("booked-after-due", "2026-12-22"), (late.Cautions[0].Code, late.Cautions[0].Arguments[0]));
    }

    [Fact]
    public async Task An_examination_on_the_day_of_the_gate_leaves_the_interval()
    {
        await using ExerciseHouse house = await ExaminedAsync();
        await house.SignAsync(ExerciseHouse.Plan);
        house.House.Time.Advance(TimeSpan.FromDays(28));
        await house.House.SignedAsync(house.Case, Wishes.Content(Gate, (10, 0), (12, 0.4)));

        RecheckDue due = (await house.House.RowAsync(house.Case)).Due;

        Assert.Equal((Gate.AddDays(60), DueBy.Interval), (due.DueDate, due.By));
    }

    [Fact]
    public async Task A_step_whose_interval_is_out_of_range_is_told_beside_its_field_and_cannot_be_signed()
    {
        await using ExerciseHouse house = await ExerciseHouse.BuildAsync();
        PlanVersion plan = ExerciseHouse.Plan;

        Outcome<Saved> signed = await house.SignAsync(
            plan with
            {
                Steps = [plan.Steps[0] with { RecheckIntervalDays = 0 }, plan.Steps[1]],
            }
        );

        Assert.Equal(
            [("steps[0].recheckIntervalDays", "interval-out-of-range")],
            signed.Problems.Select(problem => (problem.Field, problem.Code))
        );
    }

    private static async Task<ExerciseHouse> ExaminedAsync()
    {
        ExerciseHouse house = await ExerciseHouse.BuildAsync();
        await house.House.SignedAsync(house.Case, Wishes.Content(ExerciseHouse.Today, (10, 0), (12, 0.5)));
        return house;
    }

    private static async Task<OverviewView> OverviewAsync(ExerciseHouse house) =>
        (await house.House.Get<GetOverview>().ExecuteAsync(house.House.Vet, NoInput.Value)).Value;
}
