using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Schedule;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.History;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Bookings;

public sealed class BookingTests
{
    [Fact]
    public async Task An_assistant_books_moves_and_cancels_and_the_history_tells_it()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor assistant = await house.PersonAsync("Petra Lowe", Role.Assistant);
        Guid injury = (await house.ExaminedAsync(50)).Id;

        Saved booked = (await house.BookAsync(injury, 5, "09:30", " Long Acre ", house.Vet.PersonId, actor: assistant)).Value;
        BookingView first = (await house.RowAsync(injury)).Booking!;
        Saved moved = (
            await house
                .Get<MoveBooking>()
                .ExecuteAsync(assistant, new MoveBookingInput(Guid.NewGuid(), booked.Id, booked.Version, Diary.Plan(7)))
        ).Value;
        BookingView second = (await house.RowAsync(injury)).Booking!;
        Outcome<Saved> cancelled = await house
            .Get<CancelBooking>()
            .ExecuteAsync(assistant, new CancelBookingInput(Guid.NewGuid(), booked.Id, moved.Version, "Horse is away"));

        Assert.Equal((Diary.Today.AddDays(5), new TimeOnly(9, 30), "Long Acre", 45), (first.Date, first.Time, first.Place, first.Minutes));
        Assert.Equal((booked.Id, Diary.Today.AddDays(7), null, null), (second.Id, second.Date, second.Time, second.Place));
        Assert.True(cancelled.Succeeded);
        Assert.Null((await house.RowAsync(injury)).Booking);
        Assert.Equal(2, await house.LookAsync(records => records.Bookings.Select(booking => booking.Sequence).SingleAsync()));
        IReadOnlyList<ChangeView> history = (await house.Get<GetChanges>().ExecuteAsync(house.Vet, injury)).Value;
        Assert.Equal(
            ["CancelBooking", "MoveBooking", "BookRecheck"],
            history.Where(change => change.Kind == "Booking").Select(change => change.UseCase)
        );
        Assert.All(history.Where(change => change.Kind == "Booking"), change => Assert.Equal("Petra Lowe", change.By));
        // A person is told by name, not by the id that is kept.
        Assert.Equal(
            house.Vet.Name,
            history.Single(change => change.UseCase == "BookRecheck").Fields.Single(field => field.Field == "vetId").After
        );
    }

    [Fact]
    public async Task A_repeated_command_books_once_and_a_second_booking_for_the_same_recheck_is_refused()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid injury = (await house.ExaminedAsync(50)).Id;
        Guid wish = Guid.NewGuid();

        Saved once = (await house.BookAsync(injury, 5, commandId: wish)).Value;
        Saved again = (await house.BookAsync(injury, 5, commandId: wish)).Value;
        Outcome<Saved> second = await house.BookAsync(injury, 6);

        Assert.Equal(once, again);
        Assert.Equal("recheck-already-booked", second.Codes());
        Assert.Equal(1, await house.LookAsync(records => records.Bookings.CountAsync()));
    }

    [Theory]
    [InlineData(-1, "recheck-in-the-past")]
    [InlineData(-50, "recheck-before-last-examination")]
    [InlineData(-60, "recheck-before-last-examination")]
    [InlineData(731, "recheck-too-far")]
    [InlineData(0, "")]
    public async Task A_recheck_comes_after_the_last_examination_and_not_in_the_past(int days, string codes)
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid injury = (await house.ExaminedAsync(50)).Id;

        Assert.Equal(codes, (await house.BookAsync(injury, days)).Codes());
    }

    [Fact]
    public async Task Whatever_is_wrong_is_told_at_once_and_nothing_is_kept()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid injury = (await house.ExaminedAsync(50)).Id;
        Actor trainer = await house.PersonAsync("Wren Ashby", Role.Trainer);

        Outcome<Saved> refused = await house
            .Get<BookRecheck>()
            .ExecuteAsync(
                house.Vet,
                new BookRecheckInput(
                    Guid.NewGuid(),
                    injury,
                    Diary.Plan(-1, place: new string('x', 201)) with
                    {
                        Minutes = 481,
                        VetId = trainer.PersonId,
                    }
                )
            );

        Assert.Equal("recheck-in-the-past,visit-minutes-out-of-range,text-too-long,not-found", refused.Codes());
        Assert.Equal(0, await house.LookAsync(records => records.Bookings.CountAsync()));
    }

    [Fact]
    public async Task The_second_of_two_who_move_it_at_once_is_told_both_values_and_loses_nothing()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid injury = (await house.ExaminedAsync(50)).Id;
        Saved read = (await house.BookAsync(injury, 5, "09:00")).Value;
        MoveBooking move = house.Get<MoveBooking>();

        Assert.True(
            (
                await move.ExecuteAsync(house.Vet, new MoveBookingInput(Guid.NewGuid(), read.Id, read.Version, Diary.Plan(6, "09:00")))
            ).Succeeded
        );
        Outcome<Saved> second = await move.ExecuteAsync(
            house.Vet,
            new MoveBookingInput(Guid.NewGuid(), read.Id, read.Version, Diary.Plan(8, "09:00"))
        );

        Assert.Equal(["date"], second.Problems.Select(problem => problem.Field));
        Assert.Equal(["2026-11-30", "2026-12-02"], second.Problems[0].Arguments);
        Assert.Equal(Diary.Today.AddDays(6), (await house.RowAsync(injury)).Booking!.Date);
    }

    [Fact]
    public async Task What_overlaps_for_the_same_vet_or_place_is_told_and_booked_all_the_same()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid first = (await house.ExaminedAsync(50)).Id;
        Guid second = (await house.ExaminedAsync(50, "Marram Bay")).Id;
        Guid third = (await house.ExaminedAsync(50, "Fenland Reed")).Id;
        await house.BookAsync(first, 5, "09:00", "Long Acre", house.Vet.PersonId);

        Outcome<Saved> sameVet = await house.BookAsync(second, 5, "09:30", vetId: house.Vet.PersonId);
        Outcome<Saved> samePlace = await house.BookAsync(third, 5, "08:40", "long acre");

        Assert.Equal(["vet-booked-twice"], sameVet.Cautions.Select(caution => caution.Code));
        Assert.Equal(["Thistle Vane", "09:00"], sameVet.Cautions[0].Arguments);
        Assert.Equal(["place-booked-twice"], samePlace.Cautions.Select(caution => caution.Code));
        Assert.Equal(
            [new ClashView("Marram Bay", new TimeOnly(9, 30), true), new ClashView("Fenland Reed", new TimeOnly(8, 40), false)],
            (await house.RowAsync(first)).Booking!.Clashes.OrderByDescending(clash => clash.Time)
        );
    }

    [Fact]
    public async Task A_day_after_the_due_date_is_booked_with_a_caution()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid injury = (await house.ExaminedAsync(50)).Id;

        Outcome<Saved> late = await house.BookAsync(injury, 11);

        Assert.Equal(["booked-after-due"], late.Cautions.Select(caution => caution.Code));
        Assert.True((await house.RowAsync(injury)).Booking!.IsAfterDue);
    }

    [Fact]
    public async Task Calls_are_noted_with_who_and_when_and_the_last_one_is_shown_until_the_next_examination()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid injury = (await house.ExaminedAsync(61)).Id;
        Actor trainer = await house.PersonAsync("Wren Ashby", Role.Trainer);
        NoteCall note = house.Get<NoteCall>();

        await note.ExecuteAsync(house.Vet, new NoteCallInput(Guid.NewGuid(), injury, CallOutcome.NoAnswer, null, null));
        await note.ExecuteAsync(
            house.Vet,
            new NoteCallInput(Guid.NewGuid(), injury, CallOutcome.LeftMessage, trainer.PersonId, "Rings back on Monday")
        );
        Outcome<Saved> empty = await note.ExecuteAsync(house.Vet, new NoteCallInput(Guid.NewGuid(), injury, CallOutcome.Note, null, " "));

        CallView last = (await house.RowAsync(injury)).LastCall!;
        Assert.Equal("field-empty", empty.Codes());
        Assert.Equal(
            new CallView(CallOutcome.LeftMessage, "Wren Ashby", "Rings back on Monday", "Edda Marrow", house.Time.GetUtcNow().UtcDateTime),
            last
        );
        house.Time.Advance(TimeSpan.FromDays(1));
        await house.SignedAsync(injury, Wishes.Content(Diary.Today.AddDays(1), (10, 0), (12, 0.4)));
        Assert.Null((await house.RowAsync(injury)).LastCall);
    }

    [Fact]
    public async Task An_interval_of_the_case_goes_before_the_practices_on_the_board_the_overview_and_the_case()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved injury = await house.ExaminedAsync(40);
        SetInterval set = house.Get<SetInterval>();
        Assert.DoesNotContain((await house.BoardAsync()).Rows, row => row.CaseId == injury.Id);

        Guid version = (await house.RowAsync(injury.Id)).CaseVersion;
        Outcome<Saved> wrong = await set.ExecuteAsync(house.Vet, new SetIntervalInput(Guid.NewGuid(), injury.Id, version, 0));
        Assert.True((await set.ExecuteAsync(house.Vet, new SetIntervalInput(Guid.NewGuid(), injury.Id, version, 30))).Succeeded);

        BoardRow row = Assert.Single((await house.BoardAsync()).Rows);
        var overview = (await house.Get<Records.Overview.GetOverview>().ExecuteAsync(house.Vet, NoInput.Value)).Value;
        var view = (await house.Get<Records.Cases.GetCase>().ExecuteAsync(house.Vet, injury.Id)).Value;
        Assert.Equal("interval-out-of-range", wrong.Codes());
        Assert.Equal((RecheckStanding.Overdue, -10, 30, (int?)30), (row.Standing, row.Due.DaysLeft, row.IntervalDays, row.OwnIntervalDays));
        Assert.Equal((1, 0), (overview.OverdueCount, overview.SoonCount));
        Assert.Equal(Diary.Today.AddDays(-10), view.Summary!.DueOn);
    }
}
