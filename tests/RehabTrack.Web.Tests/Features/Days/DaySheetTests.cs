using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Exercise;
using RehabTrack.Web.Features.Days;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Days;

/// <summary>What somebody of the practice enters for a person on the telephone.</summary>
public sealed class DaySheetTests(EmptyPractice kept) : IClassFixture<EmptyPractice>
{
    private async Task<HorseInRehab> SignedAsync(string name)
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(kept, name);
        await horse.SignAsync(HorseInRehab.Plan);
        return horse;
    }

    private static IRenderedComponent<DaySheet> Open(BunitContext tab, HorseInRehab horse, string form)
    {
        tab.Services.GetRequiredService<NavigationManager>().NavigateTo($"/horses/{horse.Id}/day?do={form}");
        IRenderedComponent<DaySheet> page = tab.Render<DaySheet>(parameters => parameters.Add(sheet => sheet.Id, horse.Id));
        page.WaitForElement("#day-form");
        return page;
    }

    private static Task TypeAsync(IRenderedComponent<DaySheet> page, string field, string text) =>
        field == "onBehalfOf"
            ? page.Find($"#{field}").InputAsync(new ChangeEventArgs { Value = text })
            : page.Find($"#{field}").ChangeAsync(new ChangeEventArgs { Value = text });

    private static string Status(IRenderedComponent<DaySheet> page) => page.Find("[role=status]").TextContent.Trim();

    [Fact]
    public async Task A_day_is_logged_for_the_trainer_with_todays_permit_filled_in_and_no_sign()
    {
        HorseInRehab horse = await SignedAsync("Thistle Vane");
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<DaySheet> page = Open(tab, horse, "log");
        Assert.Equal("40", page.Find("#walk").GetAttribute("value"));

        await TypeAsync(page, "onBehalfOf", horse.Trainer.Name);
        await TypeAsync(page, "walk", "25");
        await page.Find("#day-form").SubmitAsync();

        Assert.Equal(DayPage.SaidLog, Status(page));
        ExerciseLine line = (await horse.ViewAsync()).Lines[^1];
        Assert.Equal((horse.Trainer.Name, kept.Vet.Name), (line.OnBehalfOf, line.EnteredBy));
        DayLog log = ((DayLogged)line.Entry).Log;
        Assert.Equal((new OutingMinutes(25), SignGrade.NotChecked, null), (log.Done, log.Heat, log.Lameness));
    }

    [Fact]
    public async Task After_an_entry_no_form_stands_filled_in_for_a_second_click_until_more_is_asked_for()
    {
        HorseInRehab horse = await SignedAsync("Sedge Warbler");
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<DaySheet> page = Open(tab, horse, "log");
        await page.Find("#day-form").SubmitAsync();

        Assert.Empty(page.FindAll("#day-form"));
        Assert.Single((await horse.ViewAsync()).Logs);
        await page.Find("#enter-more").ClickAsync(new());
        Assert.Equal("40", page.Find("#walk").GetAttribute("value"));
        Assert.Equal("", Status(page));
    }

    [Fact]
    public async Task A_sign_that_was_told_drops_the_permit_on_the_page()
    {
        HorseInRehab horse = await SignedAsync("Marram Bay");
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<DaySheet> page = Open(tab, horse, "log");

        await TypeAsync(page, "heat", nameof(SignGrade.Slight));
        await page.Find("#day-form").SubmitAsync();

        Assert.Equal(DayPage.SaidSign, Status(page));
        Assert.Equal(PermitState.Floor, (await horse.ViewAsync()).Today.State);
        Assert.NotEmpty(page.FindAll(".concerns"));
    }

    [Fact]
    public async Task What_cannot_be_kept_is_said_beside_its_field_and_what_was_typed_stays()
    {
        HorseInRehab horse = await SignedAsync("Fenland Reed");
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<DaySheet> page = Open(tab, horse, "log");

        await TypeAsync(page, "trot", "ten");
        await page.Find("#day-form").SubmitAsync();
        Assert.Contains("ten", page.Find("#trot-error").TextContent, StringComparison.Ordinal);

        await TypeAsync(page, "trot", "1441");
        await TypeAsync(page, "date", "2026-11-26");
        await page.Find("#day-form").SubmitAsync();

        Assert.Contains("1441", page.Find("#trot-error").TextContent, StringComparison.Ordinal);
        Assert.Contains("future", page.Find("#date-error").TextContent, StringComparison.Ordinal);
        Assert.Equal("1441", page.Find("#trot").GetAttribute("value"));
        Assert.DoesNotContain((await horse.ViewAsync()).Lines, line => line.Entry is DayLogged);
    }

    [Fact]
    public async Task A_concern_is_opened_for_the_owner_in_their_words()
    {
        HorseInRehab horse = await SignedAsync("Isel Court");
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<DaySheet> page = Open(tab, horse, "concern");

        await TypeAsync(page, "onBehalfOf", "Jory Fenn");
        await TypeAsync(page, "words", "short behind since Sunday");
        await page.Find("#day-form").SubmitAsync();

        Assert.Equal(DayPage.SaidConcern, Status(page));
        ConcernView concern = Assert.Single((await horse.ViewAsync()).Concerns);
        Assert.Equal(("Jory Fenn", "short behind since Sunday"), (concern.Line.OnBehalfOf, concern.Line.Words!.Words));
    }

    [Fact]
    public async Task Days_away_permit_no_work_and_need_a_first_day()
    {
        HorseInRehab horse = await SignedAsync("Garrow Lea");
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<DaySheet> page = Open(tab, horse, "away");

        await TypeAsync(page, "from", "");
        await page.Find("#day-form").SubmitAsync();
        Assert.NotEmpty(page.FindAll("#from-error"));

        await TypeAsync(page, "from", "2026-11-25");
        await TypeAsync(page, "until", "2026-11-28");
        await page.Find("#day-form").SubmitAsync();

        Assert.Equal(DayPage.SaidAway, Status(page));
        Assert.Equal(PermitState.Paused, (await horse.ViewAsync()).Today.State);
    }

    [Fact]
    public async Task Work_is_lowered_with_a_reason_from_what_is_signed()
    {
        HorseInRehab horse = await SignedAsync("Sallow Tarn");
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<DaySheet> page = Open(tab, horse, "lower");
        Assert.Equal("20", page.Find("#atmost-walk").GetAttribute("value"));

        await page.Find("#day-form").SubmitAsync();
        Assert.NotEmpty(page.FindAll("#words-error"));
        Assert.NotEmpty(page.FindAll("#atMost-error"));

        await page.Find("#atmost-walk").ChangeAsync(new ChangeEventArgs { Value = "10" });
        await TypeAsync(page, "words", "hot days");
        await page.Find("#day-form").SubmitAsync();

        Assert.Equal(DayPage.SaidLower, Status(page));
        Assert.Equal(10, (await horse.ViewAsync()).Today.Work.Outing.Walk);
    }
}
