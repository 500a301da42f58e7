using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Care;
using RehabTrack.Records.Care;
using RehabTrack.Records.Room;
using RehabTrack.Web.Features.Timeline;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Timeline;

/// <summary>A treatment that two people correct at once.</summary>
public sealed class SharedCareTests(EmptyPractice kept) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task What_both_changed_is_chosen_and_the_rest_comes_together()
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(kept, "Willow Beck");
        SaveCareInput care = new()
        {
            CommandId = Guid.NewGuid(),
            HorseId = horse.Id,
            Entry = new CareEntry { Kind = CareKind.Shoeing, From = HorseInRehab.Today },
        };
        Saved saved = await kept.DoneAsync<SaveCare, SaveCareInput, Saved>(care);
        await using BunitContext tab = kept.Tab();
        tab.Services.GetRequiredService<NavigationManager>().NavigateTo($"/horses/{horse.Id}/time?do=correct&entry={saved.Id}");
        IRenderedComponent<HorseTime> page = tab.Render<HorseTime>(with => with.Add(one => one.Id, horse.Id));
        await page.TypeAsync("words", "bar shoes");
        await page.TypeAsync("caseId", "1");
        await kept.DoneAsync<SaveCare, SaveCareInput, Saved>(
            care with
            {
                CommandId = Guid.NewGuid(),
                Id = saved.Id,
                Version = saved.Version,
                Entry = care.Entry with { From = HorseInRehab.Today.AddDays(-2), Words = "egg bar shoes" },
            }
        );

        await page.Find("#care-form").SubmitAsync();

        page.AssertTaken(kept.Vet.Name, $"{TimelinePage.Day}: {Figures.Date(HorseInRehab.Today.AddDays(-2))}");
        page.AssertAsks("words", "bar shoes", "egg bar shoes");
        await page.ChooseAsync("words", theirs: false);
        await page.Find("#care-form").SubmitAsync();

        CareEntry now = Assert.Single(await kept.DoneAsync<ListCare, Guid, IReadOnlyList<CareView>>(horse.Id)).Entry;
        Assert.Equal(("bar shoes", HorseInRehab.Today.AddDays(-2), horse.Case.ToString()), (now.Words, now.From, now.CaseId));
    }
}
