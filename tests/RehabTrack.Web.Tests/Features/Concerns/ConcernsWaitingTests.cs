using AngleSharp.Dom;
using Bunit;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Room;
using RehabTrack.Web.Features.Concerns;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Concerns;

/// <summary>The concerns on the start page of who is signed in.</summary>
public sealed class ConcernsWaitingTests(EmptyPractice kept) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task A_concern_of_the_readers_own_horse_is_named_theirs_and_can_be_said_to_be_seen()
    {
        HorseInRehab other = await HorseInRehab.BuildAsync(kept, "Of nobody");
        HorseInRehab own = await HorseInRehab.BuildAsync(kept, "Of the reader");
        CaseView view = (await kept.Services.GetRequiredService<GetCase>().ExecuteAsync(kept.Vet, other.Case)).Value;
        Outcome<Saved> nobodys = await kept
            .Services.GetRequiredService<ChangeCase>()
            .ExecuteAsync(
                kept.Vet,
                new ChangeCaseInput
                {
                    CommandId = Guid.NewGuid(),
                    Id = other.Case,
                    Version = view.Version,
                    Limb = Limb.LeftHind,
                    Structure = Structure.SuspensoryLigament,
                    ResponsibleVetId = null,
                }
            );
        Assert.True(nobodys.Succeeded);
        await own.ConcernAsync("warm, left hind");
        await other.ConcernAsync("stumbled");
        await using BunitContext tab = kept.Tab();

        IRenderedComponent<ConcernsWaiting> page = tab.Render<ConcernsWaiting>();

        IElement[] rows = [.. page.FindAll("li")];
        Assert.Equal(2, rows.Length);
        Assert.StartsWith("Of the reader", rows[0].QuerySelector(".name")!.TextContent, StringComparison.Ordinal);
        Assert.Equal($"/horses/{own.Id}/plan", rows[0].QuerySelector("a.name")!.GetAttribute("href"));
        Assert.Equal([ConcernTexts.Yours, ConcernTexts.Nobodys], rows.Select(row => row.QuerySelector(".sheet-head .mark")!.TextContent));
        Assert.Contains("Warm, left hind", rows[0].TextContent, StringComparison.Ordinal);

        await rows[0].QuerySelector("button")!.ClickAsync();

        // Seen is not answered: it leaves this box and stands on in the list of what needs a person.
        Assert.Equal([ConcernTexts.Nobodys], page.FindAll("li .sheet-head .mark").Select(mark => mark.TextContent));
        Assert.Equal(kept.Vet.Name, (await own.YardAsync()).Concern!.SeenBy);
    }
}
