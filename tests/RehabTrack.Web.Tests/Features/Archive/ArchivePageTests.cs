using AngleSharp.Dom;
using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Care;
using RehabTrack.Records.Archive;
using RehabTrack.Records.Care;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Components.Archive;
using RehabTrack.Web.Features.Archive;
using RehabTrack.Web.Features.Cases;
using RehabTrack.Web.Features.Horses;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Archive;

/// <summary>What was put away is found with who did it and when, and a press brings it back.</summary>
public sealed class ArchivePageTests(EmptyPractice kept) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task A_horse_that_was_put_away_on_its_page_comes_back_there()
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(kept, "Sorrel Fen");
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<HorseDetail> page = tab.Render<HorseDetail>(with => with.Add(one => one.Id, horse.Id));
        await Button(page, HorsePageTexts.Archive).ClickAsync(new());
        await Button(page, ArchiveTexts.PutAway).ClickAsync(new());
        Assert.Contains(HorsePageTexts.IsArchived, page.Find(".notice").TextContent, StringComparison.Ordinal);
        tab.Services.GetRequiredService<NavigationManager>().NavigateTo("/horses?archived=true");
        Assert.Equal(ArchiveAddress.Of(ArchivedKind.Horse), tab.Render<HorseList>().Find(".put-away a").GetAttribute("href"));

        await Button(page, ArchiveTexts.BringBack).ClickAsync(new());

        Assert.DoesNotContain(HorsePageTexts.IsArchived, page.Markup, StringComparison.Ordinal);
        Assert.False((await kept.Services.GetRequiredService<GetHorse>().ExecuteAsync(kept.Vet, horse.Id)).Value.Archived);
    }

    [Fact]
    public async Task A_case_that_was_put_away_on_its_page_is_listed_with_who_did_it_and_comes_back()
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(kept, "Meadow Rue");
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<CaseEditor> editor = tab.Render<CaseEditor>(with => with.Add(one => one.Id, horse.Case));
        await Button(editor, CaseForm.Archive).ClickAsync(new());
        await Button(editor, ArchiveTexts.PutAway).ClickAsync(new());
        Assert.EndsWith($"/horses/{horse.Id}", tab.Services.GetRequiredService<NavigationManager>().Uri, StringComparison.Ordinal);
        IRenderedComponent<HorseDetail> detail = tab.Render<HorseDetail>(with => with.Add(one => one.Id, horse.Id));
        Assert.Equal(ArchiveAddress.Of(ArchivedKind.Case, horse.Id), detail.Find(".put-away a").GetAttribute("href"));

        IRenderedComponent<ArchivePage> page = Open(tab, ArchivedKind.Case, horse.Id);
        IElement line = Assert.Single(page.FindAll(".archived > li"));
        Assert.StartsWith(
            string.Format(TextCulture.Default, ArchiveTexts.AwayBy, kept.Vet.Name, Figures.Date(HorseInRehab.Today)),
            line.QuerySelector(".soft")!.TextContent,
            StringComparison.Ordinal
        );
        await line.QuerySelector("button")!.ClickAsync(new());

        Assert.Empty(page.FindAll(".archived > li"));
        Assert.Equal($"/cases/{horse.Case}", page.Find("[role=status] a").GetAttribute("href"));
        Assert.True((await kept.Services.GetRequiredService<GetCase>().ExecuteAsync(kept.Vet, horse.Case)).Succeeded);
    }

    [Fact]
    public async Task A_draft_of_a_case_that_is_away_leads_to_the_case_first()
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(kept, "Marsh Clover");
        Saved draft = (
            await kept
                .Services.GetRequiredService<StartExamination>()
                .ExecuteAsync(kept.Vet, new StartExaminationInput { CommandId = Guid.NewGuid(), CaseId = horse.Case })
        ).Value;
        await DoneAsync<ArchiveDraft>(draft);
        CaseView injury = (await kept.Services.GetRequiredService<GetCase>().ExecuteAsync(kept.Vet, horse.Case)).Value;
        await DoneAsync<ArchiveCase>(new Saved(injury.Id, injury.Version));
        await using BunitContext tab = kept.Tab();

        IElement line = Assert.Single(Open(tab, ArchivedKind.Draft, horse.Id).FindAll(".archived > li"));

        Assert.Null(line.QuerySelector("button"));
        Assert.Equal(ArchiveAddress.Of(ArchivedKind.Case, horse.Id), line.QuerySelector("a")!.GetAttribute("href"));
        Assert.Contains(ArchiveTexts.CaseFirst, line.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_come_back_says_why_beside_its_line()
    {
        SaveHorseInput chipped = new()
        {
            CommandId = Guid.NewGuid(),
            Name = "Tarn Pike",
            Microchip = "040098100777777",
        };
        Saved first = (await kept.Services.GetRequiredService<SaveHorse>().ExecuteAsync(kept.Vet, chipped)).Value;
        await DoneAsync<ArchiveHorse>(first);
        await kept
            .Services.GetRequiredService<SaveHorse>()
            .ExecuteAsync(kept.Vet, chipped with { CommandId = Guid.NewGuid(), Name = "Tarn Pike the Younger" });
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<ArchivePage> page = Open(tab, ArchivedKind.Horse);

        await Line(page, "Tarn Pike").QuerySelector("button")!.ClickAsync(new());

        Assert.Contains(
            "Tarn Pike the Younger",
            Line(page, "Tarn Pike").QuerySelector("[role=alert]")!.TextContent,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task An_entry_that_was_put_away_is_listed_with_the_reason()
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(kept, "Heron Sedge");
        Saved care = (
            await kept
                .Services.GetRequiredService<SaveCare>()
                .ExecuteAsync(
                    kept.Vet,
                    new SaveCareInput
                    {
                        CommandId = Guid.NewGuid(),
                        HorseId = horse.Id,
                        Entry = new CareEntry { Kind = CareKind.Shoeing, From = HorseInRehab.Today },
                    }
                )
        ).Value;
        await kept
            .Services.GetRequiredService<ArchiveCare>()
            .ExecuteAsync(kept.Vet, new ArchiveCareInput(Guid.NewGuid(), care.Id, care.Version, "another horse"));
        await using BunitContext tab = kept.Tab();

        IRenderedComponent<ArchivePage> page = Open(tab, ArchivedKind.Care, horse.Id);
        Assert.EndsWith(": another horse", page.Find(".archived .soft").TextContent, StringComparison.Ordinal);
        await page.Find(".archived button").ClickAsync(new());

        Assert.Single((await kept.Services.GetRequiredService<ListCare>().ExecuteAsync(kept.Vet, horse.Id)).Value);
    }

    [Fact]
    public async Task An_assistant_is_told_who_can_bring_staff_back()
    {
        Actor assistant = await kept.AssistantAsync();
        Saved gone = (
            await kept
                .Services.GetRequiredService<Records.People.SavePerson>()
                .ExecuteAsync(
                    kept.Vet,
                    new Records.People.SavePersonInput
                    {
                        CommandId = Guid.NewGuid(),
                        Name = "Ivo Larch",
                        Role = Role.Vet,
                        CanSignIn = true,
                    }
                )
        ).Value;
        await DoneAsync<Records.People.ArchivePerson>(gone);
        await using BunitContext tab = kept.Tab(assistant);
        await using BunitContext vets = kept.Tab();

        Assert.Null(Line(Open(tab, ArchivedKind.Person), "Ivo Larch").QuerySelector("button"));
        Assert.NotNull(Line(Open(vets, ArchivedKind.Person), "Ivo Larch").QuerySelector("button"));
    }

    private async Task DoneAsync<TUseCase>(Saved record)
        where TUseCase : UseCase<RecordInput, Saved> =>
        Assert.Empty(
            (
                await kept
                    .Services.GetRequiredService<TUseCase>()
                    .ExecuteAsync(kept.Vet, new RecordInput(Guid.NewGuid(), record.Id, record.Version))
            ).Problems
        );

    private static IRenderedComponent<ArchivePage> Open(BunitContext tab, ArchivedKind kind, Guid? horse = null)
    {
        tab.Services.GetRequiredService<NavigationManager>().NavigateTo(ArchiveAddress.Of(kind, horse));
        return tab.Render<ArchivePage>();
    }

    private static IElement Line(IRenderedComponent<ArchivePage> page, string name) =>
        page.FindAll(".archived > li").Single(line => line.QuerySelector(".name")!.TextContent == name);

    private static IElement Button<T>(IRenderedComponent<T> page, string text)
        where T : IComponent => page.FindAll("button").Single(button => button.TextContent.Trim() == text);
}
