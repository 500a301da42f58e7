using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Feeds;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Start;
using RehabTrack.Records.Tests.Bookings;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Feeds;

public sealed class FeedTests
{
    private static readonly string First = new('a', 64);
    private static readonly string Second = new('b', 64);

    [Fact]
    public async Task An_unknown_an_older_and_a_revoked_address_answer_the_same_nothing()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        FeedDoor door = house.Get<FeedDoor>();

        await RenewAsync(house, First);
        Assert.NotNull(await door.FindAsync(First));
        Saved second = (await RenewAsync(house, Second)).Value;
        Assert.Null(await door.FindAsync(First));
        Assert.NotNull(await door.FindAsync(Second));
        Assert.Equal("Edda Marrow", (await house.Get<GetFeed>().ExecuteAsync(house.Vet, NoInput.Value)).Value.MadeBy);
        Assert.True(
            (await house.Get<RevokeFeed>().ExecuteAsync(house.Vet, new RecordInput(Guid.NewGuid(), second.Id, second.Version))).Succeeded
        );
        Assert.Null(await door.FindAsync(Second));
        Assert.Null(await door.FindAsync(new string('c', 64)));
        Assert.Equal("not-found", (await house.Get<GetFeed>().ExecuteAsync(house.Vet, NoInput.Value)).Codes());
    }

    [Fact]
    public async Task A_move_a_cancellation_and_a_close_raise_the_sequence_of_the_same_entry()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await RenewAsync(house, First);
        Saved injury = await house.ExaminedAsync(50);
        Saved booked = (await house.BookAsync(injury.Id, 5, "09:00")).Value;

        CalendarVisit before = await OnlyAsync(house);
        Saved moved = (
            await house
                .Get<MoveBooking>()
                .ExecuteAsync(house.Vet, new MoveBookingInput(Guid.NewGuid(), booked.Id, booked.Version, Diary.Plan(6, "10:00")))
        ).Value;
        CalendarVisit after = await OnlyAsync(house);
        await house.Get<CancelBooking>().ExecuteAsync(house.Vet, new CancelBookingInput(Guid.NewGuid(), booked.Id, moved.Version, null));
        CalendarVisit cancelled = await OnlyAsync(house);

        Assert.Equal(
            (booked.Id, 0, false, new DateTime(2026, 11, 29, 8, 0, 0)),
            (before.BookingId, before.Sequence, before.IsCancelled, before.Begins)
        );
        Assert.Equal(
            (booked.Id, 1, false, new DateTime(2026, 11, 30, 9, 0, 0)),
            (after.BookingId, after.Sequence, after.IsCancelled, after.Begins)
        );
        Assert.Equal((booked.Id, 2, true), (cancelled.BookingId, cancelled.Sequence, cancelled.IsCancelled));
    }

    [Fact]
    public async Task A_case_that_is_put_away_takes_its_entry_along()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await RenewAsync(house, First);
        Saved injury = await house.ExaminedAsync(50);
        await house.BookAsync(injury.Id, 5);

        Guid version = (await house.Get<GetCase>().ExecuteAsync(house.Vet, injury.Id)).Value.Version;
        await house.Get<ArchiveCase>().ExecuteAsync(house.Vet, new RecordInput(Guid.NewGuid(), injury.Id, version));

        CalendarVisit visit = await OnlyAsync(house);
        Assert.Equal((true, 1, (DateTime?)null), (visit.IsCancelled, visit.Sequence, visit.Begins));
    }

    /// <summary>09:00 in Vienna is 08:00 UTC in winter and 07:00 in summer; 02:30 on 28 March 2027 does not exist and becomes 03:30.</summary>
    [Theory]
    [InlineData("2027-03-27", "09:00", "2027-03-27T08:00:00Z")]
    [InlineData("2027-03-28", "09:00", "2027-03-28T07:00:00Z")]
    [InlineData("2027-03-28", "02:30", "2027-03-28T01:30:00Z")]
    [InlineData("2027-10-30", "09:00", "2027-10-30T07:00:00Z")]
    [InlineData("2027-10-31", "09:00", "2027-10-31T08:00:00Z")]
    public async Task A_booked_time_is_the_walls_on_both_sides_of_a_change_of_the_clocks(string day, string time, string instant)
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await RenewAsync(house, First);
        Guid injury = (await house.ExaminedAsync(50)).Id;
        int days = DateOnly.ParseExact(day, "yyyy-MM-dd", null).DayNumber - Diary.Today.DayNumber;

        await house.BookAsync(injury, days, time);

        Assert.Equal(DateTimeOffset.Parse(instant, null).UtcDateTime, (await OnlyAsync(house)).Begins);
    }

    [Fact]
    public async Task Another_practices_address_shows_nothing_of_this_one()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor stranger = await house.FoundSecondPracticeAsync();
        Saved booked = (await house.BookAsync((await house.ExaminedAsync(50)).Id, 5)).Value;
        await house.Get<RenewFeed>().ExecuteAsync(stranger, new RenewFeedInput(Guid.NewGuid(), Second));

        CalendarContent content = (await house.Get<FeedDoor>().FindAsync(Second))!;

        Assert.Equal(("Other Shore Equine", 0), (content.PracticeName, content.Visits.Count));
        Assert.Equal("not-found", (await house.Get<GetCalendarVisit>().ExecuteAsync(stranger, booked.Id)).Codes());
    }

    [Fact]
    public async Task Nothing_but_the_hash_is_kept_and_the_history_does_not_tell_it()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await RenewAsync(house, First);

        string[] told = await house.LookAsync(records =>
            records.Changes.Where(change => change.Kind == "Feed").Select(change => change.AfterJson).ToArrayAsync()
        );

        Assert.DoesNotContain(First, Assert.Single(told), StringComparison.Ordinal);
        Assert.Equal(First, await house.LookAsync(records => records.Feeds.Select(feed => feed.SecretHash).SingleAsync()));
        Assert.DoesNotContain(
            "hash",
            JsonSerializer.Serialize((await house.Get<GetFeed>().ExecuteAsync(house.Vet, NoInput.Value)).Value),
            StringComparison.OrdinalIgnoreCase
        );
    }

    private static Task<Outcome<Saved>> RenewAsync(RecordsHouse house, string hash) =>
        house.Get<RenewFeed>().ExecuteAsync(house.Vet, new RenewFeedInput(Guid.NewGuid(), hash));

    private static async Task<CalendarVisit> OnlyAsync(RecordsHouse house) =>
        Assert.Single((await house.Get<FeedDoor>().FindAsync(First))!.Visits);
}
