using RehabTrack.Rechecks.Schedule;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Bookings;

public sealed class BoardTests
{
    [Fact]
    public async Task The_board_is_in_order_of_urgency_and_of_days_over()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await house.ExaminedAsync(61, "A day over");
        await house.ExaminedAsync(90, "A month over");
        await house.ExaminedAsync(60, "Due");
        await house.ExaminedAsync(50, "Soon");
        await house.ExaminedAsync(30, "Not due");
        await house.ExaminedAsync(3, "Done");
        Guid booked = (await house.ExaminedAsync(55, "Booked")).Id;
        await house.BookAsync(booked, 3);
        await house.CaseAsync((await house.HorseAsync("Never examined")).Id);

        Assert.Equal(
            [
                ("A month over", RecheckStanding.Overdue),
                ("A day over", RecheckStanding.Overdue),
                ("Due", RecheckStanding.Due),
                ("Soon", RecheckStanding.Soon),
                ("Booked", RecheckStanding.Booked),
                ("Done", RecheckStanding.Done),
            ],
            (await house.BoardAsync()).Rows.Select(row => (row.HorseName, row.Standing))
        );
    }

    [Fact]
    public async Task A_booked_day_that_passes_is_missed_and_an_examination_that_day_serves_it()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid missed = (await house.ExaminedAsync(50)).Id;
        Guid served = (await house.ExaminedAsync(50, "Marram Bay")).Id;
        Guid waiting = (await house.ExaminedAsync(50, "Fenland Reed")).Id;
        await house.BookAsync(missed, 2);
        await house.BookAsync(served, 2);
        await house.BookAsync(waiting, 2);

        house.Time.Advance(TimeSpan.FromDays(3));
        await house.SignedAsync(served, Wishes.Content(Diary.Today.AddDays(2), (10, 0), (12, 0.4)));
        await house.DraftAsync(waiting, Wishes.Content(Diary.Today.AddDays(2), (10, 0), (12, 0.4)));

        Assert.Equal(RecheckStanding.Missed, (await house.RowAsync(missed)).Standing);
        Assert.Equal(RecheckStanding.Unsigned, (await house.RowAsync(waiting)).Standing);
        BoardRow done = await house.RowAsync(served);
        Assert.Equal((RecheckStanding.Done, (BookingView?)null), (done.Standing, done.Booking));
        Assert.True((await house.BookAsync(served, 60)).Succeeded);
    }

    [Fact]
    public async Task Trainer_is_rung_first_then_owner_with_the_numbers_that_are_known()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor owner = await house.PersonAsync("Isaura Penn", Role.Owner);
        Actor trainer = await house.PersonAsync("Wren Ashby", Role.Trainer);
        Guid horse = (
            await house
                .Get<SaveHorse>()
                .ExecuteAsync(
                    house.Vet,
                    new SaveHorseInput
                    {
                        CommandId = Guid.NewGuid(),
                        Name = "Thistle Vane",
                        OwnerId = owner.PersonId,
                        TrainerId = trainer.PersonId,
                    }
                )
        ).Value.Id;
        Guid injury = (await house.CaseAsync(horse)).Id;
        await house.SignedAsync(injury, Wishes.Content(Diary.Today.AddDays(-61), (10, 0), (12, 0.5)));

        Assert.Equal(["Wren Ashby", "Isaura Penn"], (await house.RowAsync(injury)).ToRing.Select(person => person.Name));
    }

    /// <summary>
    /// Clocks in Vienna go forward on 29 March 2026 at 01:00 UTC and back on 25 October 2026 at 01:00 UTC. A day is the practice's date,
    /// however long it lasts.
    /// </summary>
    [Theory]
    [InlineData("2026-03-28T22:59:59Z", "2026-03-28", "2026-03-29", 1)]
    [InlineData("2026-03-28T23:00:00Z", "2026-03-29", "2026-03-29", 0)]
    [InlineData("2026-03-29T21:59:59Z", "2026-03-29", "2026-03-29", 0)]
    [InlineData("2026-03-29T22:00:00Z", "2026-03-30", "2026-03-29", -1)]
    [InlineData("2026-10-24T21:59:59Z", "2026-10-24", "2026-10-25", 1)]
    [InlineData("2026-10-24T22:00:00Z", "2026-10-25", "2026-10-25", 0)]
    [InlineData("2026-10-25T22:59:59Z", "2026-10-25", "2026-10-25", 0)]
    [InlineData("2026-10-25T23:00:00Z", "2026-10-26", "2026-10-25", -1)]
    public void A_due_date_turns_at_the_practices_midnight_around_both_changes_of_the_clocks(
        string instant,
        string day,
        string due,
        int left
    )
    {
        DateTime at = DateTimeOffset.Parse(instant, null).UtcDateTime;
        DateOnly today = PracticeTime.DateOf(at, "Europe/Vienna");
        DateOnly last = DateOnly.ParseExact(due, "yyyy-MM-dd", null).AddDays(-60);

        Assert.Equal(DateOnly.ParseExact(day, "yyyy-MM-dd", null), today);
        Assert.Equal(left, RecheckDue.Of(last, new ScheduleSettings { IntervalDays = 60 }, today).DaysLeft);
    }

    [Theory]
    [InlineData("Pacific/Auckland", "2026-11-25")]
    [InlineData("Europe/Vienna", "2026-11-24")]
    [InlineData("Pacific/Honolulu", "2026-11-23")]
    public async Task The_board_speaks_of_the_practices_own_day(string timeZone, string today)
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        house.Time.SetUtcNow(
            new DateTimeOffset(2026, 11, 24, 11, 0, 0, TimeSpan.Zero).AddMinutes(
                timeZone.StartsWith("Pacific/H", StringComparison.Ordinal) ? -90 : 0
            )
        );
        PracticeView practice = (await house.Get<GetPractice>().ExecuteAsync(house.Vet, NoInput.Value)).Value;
        await house
            .Get<ChangePractice>()
            .ExecuteAsync(house.Vet, ChangePracticeInput.Of(practice, Guid.NewGuid()) with { TimeZone = timeZone });

        Assert.Equal(DateOnly.ParseExact(today, "yyyy-MM-dd", null), (await house.BoardAsync()).Today);
    }
}
