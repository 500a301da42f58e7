using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Covers;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Features.Board;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Board;

/// <summary>Cover that two people change at once.</summary>
public sealed class SharedCoverTests(EmptyPractice kept) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task What_both_changed_is_chosen_and_the_rest_comes_together()
    {
        DateOnly today = DateOnly.FromDateTime(KeptPractice.Morning.UtcDateTime);
        Guid first = await VetAsync("Sorrel Dunn");
        Guid second = await VetAsync("Ivo Lark");
        Saved cover = await kept.DoneAsync<SaveCover, SaveCoverInput, Saved>(
            new SaveCoverInput(Guid.NewGuid(), kept.Vet.PersonId, first, today.AddDays(10), today.AddDays(12))
        );
        await using BunitContext tab = kept.Tab();
        tab.Services.GetRequiredService<NavigationManager>().NavigateTo($"/rechecks/settings?cover={cover.Id}");
        IRenderedComponent<RecheckSettingsPage> page = tab.Render<RecheckSettingsPage>();
        await page.TypeAsync("from", "2026-12-04");
        await page.TypeAsync("to", "2026-12-09");
        await kept.DoneAsync<SaveCover, SaveCoverInput, Saved>(
            new SaveCoverInput(Guid.NewGuid(), kept.Vet.PersonId, second, today.AddDays(10), today.AddDays(15), cover.Id, cover.Version)
        );

        await page.Find("section[aria-labelledby=cover] form").SubmitAsync();

        page.AssertTaken(kept.Vet.Name, $"{RecheckPage.CoverBy}: Ivo Lark");
        page.AssertAsks("to", Figures.Date(today.AddDays(14)), Figures.Date(today.AddDays(15)));
        await page.ChooseAsync("to", theirs: false);
        await page.Find("section[aria-labelledby=cover] form").SubmitAsync();

        CoverView now = Assert.Single(await kept.DoneAsync<ListCovers, NoInput, IReadOnlyList<CoverView>>(NoInput.Value));
        Assert.Equal((second, today.AddDays(9), today.AddDays(14)), (now.CoveringVetId, now.From, now.To));
    }

    private async Task<Guid> VetAsync(string name) =>
        (
            await kept.DoneAsync<SavePerson, SavePersonInput, Saved>(
                new SavePersonInput
                {
                    CommandId = Guid.NewGuid(),
                    Name = name,
                    Role = Role.Vet,
                }
            )
        ).Id;
}
