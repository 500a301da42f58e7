using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Room;
using RehabTrack.Web.Features.Board;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Board;

/// <summary>A booking, and the interval of a case, that two people change at once.</summary>
public sealed class SharedBookingTests(EmptyPractice kept) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task Of_a_booking_what_both_changed_is_chosen_and_the_rest_comes_together()
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(kept, "Moss Fell");
        BookingPlan plan = new() { Date = new DateOnly(2026, 12, 3), Place = "Long Acre" };
        Saved booked = await kept.DoneAsync<BookRecheck, BookRecheckInput, Saved>(new BookRecheckInput(Guid.NewGuid(), horse.Case, plan));
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<RecheckBoardPage> page = Open(tab, $"/rechecks?case={horse.Case}&do=book");
        await page.TypeAsync("date", "2026-12-04");
        await page.TypeAsync("travelNote", "ring first");
        await kept.DoneAsync<MoveBooking, MoveBookingInput, Saved>(
            new MoveBookingInput(
                Guid.NewGuid(),
                booked.Id,
                booked.Version,
                plan with
                {
                    Date = new DateOnly(2026, 12, 7),
                    Time = new TimeOnly(9, 30),
                }
            )
        );

        await page.Find(".board-form").SubmitAsync();

        page.AssertTaken(kept.Vet.Name, $"{RecheckPage.Time}: 09:30");
        page.AssertAsks("date", Figures.Date(new DateOnly(2026, 12, 4)), Figures.Date(new DateOnly(2026, 12, 7)));
        await page.ChooseAsync("date", theirs: true);
        await page.Find(".board-form").SubmitAsync();

        BookingView now = (await RowAsync(horse)).Booking!;
        Assert.Equal((new DateOnly(2026, 12, 7), new TimeOnly(9, 30), "ring first"), (now.Date, now.Time!.Value, now.TravelNote));
    }

    [Fact]
    public async Task An_interval_that_both_changed_is_chosen()
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(kept, "Heath Scar");
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<RecheckBoardPage> page = Open(tab, $"/rechecks?case={horse.Case}&do=more");
        await page.TypeAsync("recheckIntervalDays", "40");
        await kept.DoneAsync<SetInterval, SetIntervalInput, Saved>(
            new SetIntervalInput(Guid.NewGuid(), horse.Case, (await RowAsync(horse)).CaseVersion, 45)
        );

        await page.Find(".board-form form").SubmitAsync();

        page.AssertAsks("recheckIntervalDays", "40", "45");
        Assert.Equal(45, (await RowAsync(horse)).OwnIntervalDays);
        await page.ChooseAsync("recheckIntervalDays", theirs: false);
        await page.Find(".board-form form").SubmitAsync();
        Assert.Equal(40, (await RowAsync(horse)).OwnIntervalDays);
    }

    private static IRenderedComponent<RecheckBoardPage> Open(BunitContext tab, string address)
    {
        tab.Services.GetRequiredService<NavigationManager>().NavigateTo(address);
        return tab.Render<RecheckBoardPage>();
    }

    private async Task<BoardRow> RowAsync(HorseInRehab horse) =>
        (await kept.DoneAsync<GetBoard, BoardInput, BoardView>(new BoardInput(horse.Case))).Rows.First(row => row.CaseId == horse.Case);
}
