using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Feeds;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Room;
using RehabTrack.Web.Features.Board;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Board;

public sealed class BoardPageTests(EmptyPractice kept) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task A_recheck_is_booked_in_place_with_a_time_and_told()
    {
        Guid injury = await CaseAsync("Thistle Vane");
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<RecheckBoardPage> page = Open(tab, $"/rechecks?case={injury}&do=book");

        await page.Find("#date").ChangeAsync(new ChangeEventArgs { Value = "2026-12-03" });
        await page.Find("#time").InputAsync(new ChangeEventArgs { Value = "09:30" });
        await page.Find("#place").InputAsync(new ChangeEventArgs { Value = "Long Acre" });
        await page.Find(".board-form").SubmitAsync();

        BookingView booking = Assert.Single(await RowsAsync(), row => row.CaseId == injury).Booking!;
        Assert.Equal(
            (new DateOnly(2026, 12, 3), new TimeOnly(9, 30), 45, "Long Acre"),
            (booking.Date, booking.Time, booking.Minutes, booking.Place)
        );
        Assert.Contains(
            $"Thistle Vane is booked for Thu {Figures.Date(booking.Date)}.",
            page.Find("[role=status]").TextContent,
            StringComparison.Ordinal
        );
        Assert.Contains(
            $"Booked for Thu {Figures.Date(booking.Date)}, 09:30 for 45 min, Long Acre",
            page.Find(".board-row").TextContent,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task What_cannot_be_booked_is_said_beside_its_field_and_what_was_typed_stays()
    {
        Guid injury = await CaseAsync("Marram Bay");
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<RecheckBoardPage> page = Open(tab, $"/rechecks?case={injury}&do=book");

        await page.Find("#date").ChangeAsync(new ChangeEventArgs { Value = "2026-11-01" });
        await page.Find("#minutes").InputAsync(new ChangeEventArgs { Value = "481" });
        await page.Find(".board-form").SubmitAsync();

        Assert.Contains("2026-11-01", page.Find("#date-error").TextContent, StringComparison.Ordinal);
        Assert.Contains("481", page.Find("#minutes-error").TextContent, StringComparison.Ordinal);
        Assert.Equal("481", page.Find("#minutes").GetAttribute("value"));
    }

    [Fact]
    public async Task A_call_is_noted_in_place()
    {
        Guid injury = await CaseAsync("Fenland Reed");
        await BookAsync(injury);
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<RecheckBoardPage> page = Open(tab, $"/rechecks?case={injury}&do=call");

        await page.Find("#words").ChangeAsync(new ChangeEventArgs { Value = "Rings back on Monday" });
        await page.Find(".board-form").SubmitAsync();

        Assert.Contains("Message left: Rings back on Monday", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task By_yard_the_rows_stand_under_their_yard()
    {
        await BookAsync(await CaseAsync("Sedge Warren"));
        await using BunitContext tab = kept.Tab();

        IRenderedComponent<RecheckBoardPage> page = Open(tab, "/rechecks?by=yard");

        Assert.Contains(RecheckPage.NoYard, page.Find(".board h2").TextContent, StringComparison.Ordinal);
        Assert.Contains("Sedge Warren", page.Find(".board").TextContent, StringComparison.Ordinal);
        Assert.Equal("page", page.Find("a[href='/rechecks?by=yard']").GetAttribute("aria-current"));
    }

    [Fact]
    public async Task A_horse_that_left_is_signed_off_the_board()
    {
        Guid injury = await CaseAsync("Bracken Low");
        await BookAsync(injury);
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<RecheckBoardPage> page = Open(tab, $"/rechecks?case={injury}&do=more");

        await page.Find("#close-outcome").ChangeAsync(new ChangeEventArgs { Value = "Sound in walk" });
        await page.Find(".close-case").SubmitAsync();
        Assert.NotNull(page.Find("#close-end-error"));
        await page.Find("#close-end").ChangeAsync(new ChangeEventArgs { Value = "1" });
        await page.Find(".close-case").SubmitAsync();

        Assert.DoesNotContain(await RowsAsync(), row => row.CaseId == injury);
    }

    [Fact]
    public async Task A_calendar_address_is_shown_once_and_only_its_hash_is_kept()
    {
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<RecheckSettingsPage> page = tab.Render<RecheckSettingsPage>();

        await page.FindAll("section[aria-labelledby=feed] button")[0].ClickAsync();
        string address = page.Find("#feed-address").GetAttribute("value")!;

        Assert.Matches("^http://localhost/calendar/[A-Za-z0-9_-]{43}/rechecks.ics$", address);
        Assert.True((await kept.Services.GetRequiredService<GetFeed>().ExecuteAsync(kept.Vet, NoInput.Value)).Succeeded);
        Assert.Empty(tab.Render<RecheckSettingsPage>().FindAll("#feed-address"));
    }

    private static IRenderedComponent<RecheckBoardPage> Open(BunitContext tab, string address)
    {
        tab.Services.GetRequiredService<NavigationManager>().NavigateTo(address);
        return tab.Render<RecheckBoardPage>();
    }

    private async Task<IReadOnlyList<BoardRow>> RowsAsync() =>
        (await kept.Services.GetRequiredService<GetBoard>().ExecuteAsync(kept.Vet, new BoardInput())).Value.Rows;

    private Task BookAsync(Guid injury) =>
        kept
            .Services.GetRequiredService<BookRecheck>()
            .ExecuteAsync(
                kept.Vet,
                new BookRecheckInput(Guid.CreateVersion7(), injury, new BookingPlan { Date = new DateOnly(2026, 12, 10) })
            );

    private async Task<Guid> CaseAsync(string name)
    {
        Guid horse = (
            await kept
                .Services.GetRequiredService<SaveHorse>()
                .ExecuteAsync(kept.Vet, new SaveHorseInput { CommandId = Guid.CreateVersion7(), Name = name })
        )
            .Value
            .Id;
        return (
            await kept
                .Services.GetRequiredService<OpenCase>()
                .ExecuteAsync(
                    kept.Vet,
                    new OpenCaseInput
                    {
                        CommandId = Guid.CreateVersion7(),
                        HorseId = horse,
                        Limb = Limb.LeftHind,
                        Structure = Structure.SuspensoryLigament,
                    }
                )
        ).Value.Id;
    }
}
