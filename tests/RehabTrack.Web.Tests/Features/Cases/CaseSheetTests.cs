using AngleSharp.Dom;
using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Room;
using RehabTrack.Web.Features.Cases;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Cases;

public sealed class CaseSheetTests(DemoPracticeAtHand practice) : IClassFixture<DemoPracticeAtHand>
{
    private async Task<Guid> CaseOfAsync(string horse)
    {
        HorsePage found = (
            await practice.Services.GetRequiredService<FindHorses>().ExecuteAsync(practice.Vet, new FindHorsesInput { Query = horse })
        ).Value;
        return found.Rows[0].OpenCases[0].Id;
    }

    private static IRenderedComponent<CaseSheet> Open(BunitContext tab, Guid id, string query = "")
    {
        tab.Services.GetRequiredService<NavigationManager>().NavigateTo($"/cases/{id}{query}");
        return tab.Render<CaseSheet>(page => page.Add(one => one.Id, id));
    }

    [Fact]
    public async Task A_setback_is_said_first_then_what_needs_a_person_the_ladder_and_the_examinations()
    {
        await using BunitContext tab = practice.Tab();

        IRenderedComponent<CaseSheet> page = Open(tab, await CaseOfAsync("Pepperwick"));

        Assert.Contains("red", page.Find("section.verdict").ClassList);
        Assert.StartsWith("Worsening", page.Find(".verdict .say").TextContent.Trim(), StringComparison.Ordinal);
        Assert.NotEmpty(page.FindAll(".case-findings .mark.red"));
        Assert.NotEmpty(page.FindAll(".case-ladder [data-track]"));
        Assert.Equal(5, page.FindAll("section[aria-labelledby=examinations] tbody tr").Count);
        Assert.Empty(page.FindAll(".reading-panel"));
    }

    [Fact]
    public async Task Exercise_and_care_stand_under_the_healing_chart_on_its_axis_and_an_examination_soon_after_an_injection_is_marked()
    {
        await using BunitContext tab = practice.Tab();

        IRenderedComponent<CaseSheet> page = Open(tab, await CaseOfAsync("Tansy Fathom"));

        IElement healing = page.Find(".case-healing");
        Assert.NotEmpty(healing.QuerySelectorAll("path.over"));
        IElement[] care = [.. healing.QuerySelectorAll(".care[data-group=Treatment]")];
        // Plasma on 24 June, examined on 9 July.
        IElement framed = Assert.Single(healing.QuerySelectorAll(".desk-only .point:has(.after-injection)"));
        Assert.Contains("15 days after an injection", framed.GetAttribute("aria-label")!, StringComparison.Ordinal);
        Assert.NotEmpty(care);
        Assert.Single(page.FindAll("section[aria-labelledby=examinations] .tag"), tag => tag.TextContent == CasePage.AfterInjection);
    }

    [Fact]
    public async Task The_projection_is_for_the_vet_alone()
    {
        Guid id = await CaseOfAsync("Brimble Hob");
        await using BunitContext vet = practice.Tab();
        Assert.Contains(CasePage.ProjectionTitle, Open(vet, id).Find(".case-healing").TextContent, StringComparison.Ordinal);
        await using BunitContext assistant = practice.Tab(await practice.AssistantAsync());

        Assert.DoesNotContain(CasePage.ProjectionTitle, Open(assistant, id).Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_rung_that_is_pressed_stands_in_the_address_and_opens_its_numbers()
    {
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<CaseSheet> page = Open(tab, await CaseOfAsync("Tansy Fathom"));

        await page.FindAll(".case-ladder [data-track][tabindex]")[0].ClickAsync(new());

        string address = tab.Services.GetRequiredService<NavigationManager>().Uri;
        Assert.Matches(@"\?date=\d{4}-\d{2}-\d{2}&level=[0-9.]+&path=axial$", address);
        Assert.NotNull(page.Find(".reading-panel"));
    }

    [Fact]
    public async Task An_earlier_date_leaves_later_examinations_out()
    {
        await using BunitContext tab = practice.Tab();

        IRenderedComponent<CaseSheet> page = Open(tab, await CaseOfAsync("Tansy Fathom"), "?asof=2026-08-01");

        Assert.Contains(Figures.Date(new DateOnly(2026, 8, 1)), page.Find(".verdict").TextContent, StringComparison.Ordinal);
        Assert.StartsWith("Not yet readable", page.Find(".verdict .say").TextContent.Trim(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_case_without_an_examination_says_what_to_do_first()
    {
        HorsePage horses = (
            await practice.Services.GetRequiredService<FindHorses>().ExecuteAsync(practice.Vet, new FindHorsesInput { Query = "Quillon" })
        ).Value;
        Saved opened = (
            await practice
                .Services.GetRequiredService<OpenCase>()
                .ExecuteAsync(
                    practice.Vet,
                    new OpenCaseInput
                    {
                        CommandId = Guid.CreateVersion7(),
                        HorseId = horses.Rows[0].Id,
                        Limb = Limb.RightHind,
                        Structure = Structure.SuspensoryLigament,
                    }
                )
        ).Value;
        await using BunitContext tab = practice.Tab();

        IRenderedComponent<CaseSheet> page = Open(tab, opened.Id);

        IElement empty = page.Find(".empty");
        Assert.Contains(CasePage.Empty, empty.TextContent, StringComparison.Ordinal);
        Assert.Equal(
            [$"/cases/{opened.Id}/examinations/new", "/import"],
            empty.QuerySelectorAll("a").Select(link => link.GetAttribute("href"))
        );
        Assert.Empty(page.FindAll(".verdict"));
    }

    [Fact]
    public async Task The_figures_of_each_signature_open_beside_todays()
    {
        await using BunitContext tab = practice.Tab();
        Guid id = await CaseOfAsync("Tansy Fathom");
        IRenderedComponent<CaseSheet> page = Open(tab, id);
        IElement section = page.WaitForElement("section[aria-labelledby=seen]", TimeSpan.FromSeconds(90));
        IElement[] lines = [.. section.QuerySelectorAll("li a[aria-expanded]")];
        Assert.Empty(section.QuerySelectorAll("table"));
        Assert.Matches("^Figures seen when signing on .* by Tamsin Orrel$", lines[0].TextContent);

        string address = lines[^1].GetAttribute("href")!;
        Assert.Matches($"^/cases/{id}\\?seen=[0-9a-f-]{{36}}$", address);
        IRenderedComponent<CaseSheet> opened = Open(tab, id, address[$"/cases/{id}".Length..]);

        IElement table = opened.WaitForElement("section[aria-labelledby=seen] table", TimeSpan.FromSeconds(90));
        Assert.Equal(
            [SignedFiguresTexts.RowVerdict, SignedFiguresTexts.RowMeasure, SignedFiguresTexts.RowRate],
            table.QuerySelectorAll("tbody th").Select(row => row.TextContent).Where(row => !row.Any(char.IsDigit))
        );
        Assert.NotNull(opened.Find("section[aria-labelledby=seen] details").GetAttribute("open"));
        Assert.Contains(
            "today it is “no progress”",
            opened.Find("section[aria-labelledby=seen] .changes").TextContent,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task What_was_changed_is_told_by_whom()
    {
        await using BunitContext tab = practice.Tab();

        IRenderedComponent<CaseSheet> page = Open(tab, await CaseOfAsync("Brimble Hob"), "?changes=1");

        page.WaitForAssertion(
            () =>
                Assert.Contains(
                    page.FindAll("section[aria-labelledby=changes] li strong").Select(line => line.TextContent),
                    what => what == CasePage.Did_SignExamination
                ),
            TimeSpan.FromSeconds(90)
        );
    }
}
