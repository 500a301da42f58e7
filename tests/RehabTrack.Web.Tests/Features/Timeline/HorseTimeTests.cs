using AngleSharp.Dom;
using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Care;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Care;
using RehabTrack.Web.Features.Timeline;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Timeline;

/// <summary>What was given and seen is entered, corrected and put away on the time axis of a horse.</summary>
public sealed class HorseTimeTests(EmptyPractice kept) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task An_injection_is_entered_with_the_vets_stand_down_and_stands_on_the_axis_and_in_the_list()
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(kept, "Teasel");
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<HorseTime> page = Open(tab, horse, "do=enter");
        Assert.Empty(page.FindAll("#standDownUntil"));

        await ChooseAsync(page, "care-kind", CareKind.PlateletRichPlasma);
        await page.Find("#caseId").ChangeAsync(new ChangeEventArgs { Value = "1" });
        await page.Find("#standDownUntil").ChangeAsync(new ChangeEventArgs { Value = "2026-12-09" });
        await page.Find("#care-form").SubmitAsync();

        IElement line = Assert.Single(page.FindAll(".care-lines li"));
        Assert.StartsWith(
            Names.AsTitle(Names.Of(CareKind.PlateletRichPlasma)),
            line.QuerySelector(".name")!.TextContent,
            StringComparison.Ordinal
        );
        Assert.Contains(
            string.Format(TextCulture.Default, TimelinePage.StandDownSaid, Figures.Date(new DateOnly(2026, 12, 9)), kept.Vet.Name),
            line.TextContent,
            StringComparison.Ordinal
        );
        Assert.NotEmpty(page.FindAll(".care[data-group=Treatment]"));
        CareEntry entry = Assert.Single(await OnRecordAsync(horse)).Entry;
        Assert.Equal((CareKind.PlateletRichPlasma, horse.Case.ToString(), HorseInRehab.Today), (entry.Kind, entry.CaseId, entry.From));
    }

    [Fact]
    public async Task A_correction_begins_with_what_was_said_and_tells_who_corrected()
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(kept, "Burnet");
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<HorseTime> page = Open(tab, horse, "do=enter");
        await ChooseAsync(page, "care-kind", CareKind.Heat);
        await page.Find("#grade").ChangeAsync(new ChangeEventArgs { Value = IndexOf(page, "grade", Names.Of(SignGrade.Slight)) });
        await page.Find("#care-form").SubmitAsync();
        Guid id = Assert.Single(await OnRecordAsync(horse)).Id;

        page = Open(tab, horse, $"do=correct&entry={id}");
        Assert.Equal(IndexOf(page, "grade", Names.Of(SignGrade.Slight)), page.Find("#grade").GetAttribute("value"));
        await page.Find("#grade").ChangeAsync(new ChangeEventArgs { Value = IndexOf(page, "grade", Names.Of(SignGrade.Clear)) });
        await page.Find("#care-form").SubmitAsync();

        CareView corrected = Assert.Single(await OnRecordAsync(horse));
        Assert.Equal((SignGrade.Clear, kept.Vet.Name), (corrected.Entry.Grade, corrected.CorrectedBy));
        Assert.Contains("corrected", page.Find(".care-lines li").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_kind_and_day_each_is_told_beside_its_field_and_what_was_typed_stays()
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(kept, "Campion");
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<HorseTime> page = Open(tab, horse, "do=enter");
        await page.Find("#from").ChangeAsync(new ChangeEventArgs { Value = "" });
        await page.Find("#words").ChangeAsync(new ChangeEventArgs { Value = "by the farrier" });

        await page.Find("#care-form").SubmitAsync();

        Assert.NotEmpty(page.Find("#care-kind-error").TextContent);
        Assert.NotEmpty(page.Find("#from-error").TextContent);
        Assert.Equal("by the farrier", page.Find("#words").GetAttribute("value"));
        Assert.Empty(await OnRecordAsync(horse));
    }

    [Fact]
    public async Task Nothing_is_put_away_without_a_reason()
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(kept, "Yarrow");
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<HorseTime> page = Open(tab, horse, "do=enter");
        await ChooseAsync(page, "care-kind", CareKind.Shoeing);
        await page.Find("#care-form").SubmitAsync();

        await page.Find(".care-actions button").ClickAsync(new());
        await page.Find(".care-lines form").SubmitAsync();
        Assert.NotEmpty(page.Find("#reason-error").TextContent);
        Assert.Single(await OnRecordAsync(horse));

        await page.Find("#reason").InputAsync(new ChangeEventArgs { Value = "Another horse" });
        await page.Find(".care-lines form").SubmitAsync();
        Assert.Empty(await OnRecordAsync(horse));
        Assert.Contains(TimelinePage.Nothing, page.Markup, StringComparison.Ordinal);
    }

    private static IRenderedComponent<HorseTime> Open(BunitContext tab, HorseInRehab horse, string wish)
    {
        tab.Services.GetRequiredService<NavigationManager>().NavigateTo($"/horses/{horse.Id}/time?{wish}");
        IRenderedComponent<HorseTime> page = tab.Render<HorseTime>(parameters => parameters.Add(time => time.Id, horse.Id));
        page.WaitForElement("#care-form");
        return page;
    }

    private static Task ChooseAsync(IRenderedComponent<HorseTime> page, string field, CareKind kind) =>
        page.Find($"#{field}").ChangeAsync(new ChangeEventArgs { Value = IndexOf(page, field, Names.Of(kind)) });

    private static string IndexOf(IRenderedComponent<HorseTime> page, string field, string text) =>
        page.FindAll($"#{field} option")
            .First(option => option.TextContent.EndsWith(text, StringComparison.Ordinal))
            .GetAttribute("value")!;

    private async Task<IReadOnlyList<CareView>> OnRecordAsync(HorseInRehab horse) =>
        (await kept.Services.GetRequiredService<ListCare>().ExecuteAsync(kept.Vet, horse.Id)).Value;
}
