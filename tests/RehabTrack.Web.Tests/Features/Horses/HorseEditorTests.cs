using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Horses;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Components.People;
using RehabTrack.Web.Features.Horses;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Horses;

/// <summary>A horse that two people change at once.</summary>
public sealed class HorseEditorTests(EmptyPractice kept) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task What_only_the_other_changed_is_taken_over_and_what_both_changed_is_chosen_field_by_field()
    {
        Guid first = await PersonAsync("Ilex Marrow");
        Guid mine = await PersonAsync("Hazel Brake");
        Guid theirs = await PersonAsync("Rowan Tarn");
        Saved horse = await HorseAsync("Bracken Low", first);
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<HorseEditor> page = Open(tab, horse.Id);
        await page.TypeAsync("name", "Bracken Lowe");
        await page.TypeAsync("use", "dressage");
        await page.TypeAsync("owner", "Hazel Brake");
        // A yard that the open page cannot know yet.
        Saved yard = await kept.DoneAsync<SaveYard, SaveYardInput, Saved>(
            new SaveYardInput { CommandId = Guid.NewGuid(), Name = "Long Acre" }
        );
        await ChangeAsync(horse, input => input with { Name = "Bracken Law", Sex = Sex.Mare, OwnerId = theirs, YardId = yard.Id });

        await page.Find("form").SubmitAsync();

        page.AssertTaken(kept.Vet.Name, $"{HorsePageTexts.Sex}: {RoleNames.Of(Sex.Mare)}", $"{HorsePageTexts.Yard}: Long Acre");
        page.AssertAsks("name", "Bracken Lowe", "Bracken Law");
        page.AssertAsks("owner", "Hazel Brake", "Rowan Tarn");
        Assert.Equal("dressage", page.Find("#use").GetAttribute("value"));
        Assert.Equal("Bracken Law", (await ReadAsync(horse)).Name);

        // Nothing is saved before everything is chosen.
        await page.ChooseAsync("name", theirs: false);
        await page.Find("form").SubmitAsync();
        Assert.Equal("Bracken Law", (await ReadAsync(horse)).Name);
        Assert.Contains(FormTexts.MetUndecided, page.Find(".met").TextContent, StringComparison.Ordinal);

        await page.ChooseAsync("owner", theirs: true);
        Assert.Equal("Rowan Tarn", page.Find("#owner").GetAttribute("value"));
        await page.ChooseAsync("owner", theirs: false);
        Assert.Equal("Hazel Brake", page.Find("#owner").GetAttribute("value"));
        await page.Find("form").SubmitAsync();

        HorseView saved = await ReadAsync(horse);
        Assert.Equal(
            ("Bracken Lowe", "dressage", Sex.Mare, mine, yard.Id),
            (saved.Name, saved.Use, saved.Sex, saved.Owner!.PersonId, saved.YardId!.Value)
        );
        Assert.EndsWith($"/horses/{horse.Id}", tab.Services.GetRequiredService<NavigationManager>().Uri, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_the_other_emptied_is_blank_and_what_both_wrote_alike_is_not_asked()
    {
        Saved horse = await HorseAsync("Sorrel Wick", null);
        await ChangeAsync(horse, input => input with { Markings = "a star", Use = "eventing" });
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<HorseEditor> page = Open(tab, horse.Id);
        await page.TypeAsync("markings", "a star and two socks");
        await page.TypeAsync("use", "hacking");
        await page.TypeAsync("birth-year", "2016");
        await ChangeAsync(horse, input => input with { Markings = null, Use = "hacking" });

        await page.Find("form").SubmitAsync();

        page.AssertAsks("markings", "a star and two socks", FormTexts.ConflictBlank);
        Assert.Empty(page.FindAll("#use-mine"));
        await page.ChooseAsync("markings", theirs: true);
        await page.Find("form").SubmitAsync();
        HorseView saved = await ReadAsync(horse);
        Assert.Equal((null, "hacking", 2016), (saved.Markings, saved.Use, saved.BirthYear!.Value));
    }

    [Fact]
    public async Task What_changed_again_while_one_chose_is_asked_again()
    {
        Saved horse = await HorseAsync("Fenwick Dun", null);
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<HorseEditor> page = Open(tab, horse.Id);
        await page.TypeAsync("name", "Fenwick Dunn");
        await ChangeAsync(horse, input => input with { Name = "Fenwick Down" });
        await page.Find("form").SubmitAsync();
        await page.ChooseAsync("name", theirs: false);
        await ChangeAsync(horse, input => input with { Name = "Fenwick Dean" });

        await page.Find("form").SubmitAsync();

        page.AssertAsks("name", "Fenwick Dunn", "Fenwick Dean");
        Assert.Equal("Fenwick Dean", (await ReadAsync(horse)).Name);
    }

    private static IRenderedComponent<HorseEditor> Open(BunitContext tab, Guid horse) =>
        tab.Render<HorseEditor>(with => with.Add(one => one.Id, horse));

    private async Task<Guid> PersonAsync(string name) =>
        (
            await kept.DoneAsync<SavePerson, SavePersonInput, Saved>(
                new SavePersonInput
                {
                    CommandId = Guid.NewGuid(),
                    Name = name,
                    Role = Role.Owner,
                }
            )
        ).Id;

    private Task<Saved> HorseAsync(string name, Guid? owner) =>
        kept.DoneAsync<SaveHorse, SaveHorseInput, Saved>(
            new SaveHorseInput
            {
                CommandId = Guid.NewGuid(),
                Name = name,
                OwnerId = owner,
            }
        );

    private async Task ChangeAsync(Saved horse, Func<SaveHorseInput, SaveHorseInput> change)
    {
        HorseView now = await ReadAsync(horse);
        await kept.DoneAsync<SaveHorse, SaveHorseInput, Saved>(
            change(
                new SaveHorseInput
                {
                    CommandId = Guid.NewGuid(),
                    Id = now.Id,
                    Version = now.Version,
                    Name = now.Name,
                    Use = now.Use,
                    Markings = now.Markings,
                    OwnerId = now.Owner?.PersonId,
                }
            )
        );
    }

    private Task<HorseView> ReadAsync(Saved horse) => kept.DoneAsync<GetHorse, Guid, HorseView>(horse.Id);
}
