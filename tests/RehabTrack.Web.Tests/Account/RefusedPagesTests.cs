using System.Net;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.History;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Rights;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Web.Tests.Shared;

namespace RehabTrack.Web.Tests.Account;

/// <summary>Who tries what is not for them stands in the trail: by the pattern of the address, never by what was asked for.</summary>
public sealed class RefusedPagesTests(RunningApp app) : IClassFixture<RunningApp>
{
    [Fact]
    public async Task A_page_that_is_not_for_them_and_a_record_that_is_not_theirs_are_noted()
    {
        ShareHouse house = new(app.Services, app.Vet);
        Guid horse = await house.HorseAsync("Untold Grey", await house.PersonAsync("Owner Rowan", Role.Owner), null);
        Guid trainer = await house.PersonAsync("Trainer Larch", Role.Trainer);
        await house.HorseAsync("Own Bay", null, trainer);
        string link = (await house.LinkAsync(trainer, HorseRelation.Trainer, null)).Path;
        using HttpClient signedIn = await app.BrowserAsync(app.Trainer);
        using HttpClient stranger = app.Browser();

        foreach (string page in (string[])["/people", "/people?q=secret", $"/horses/{horse}", "/no-such-page"])
        {
            using HttpResponseMessage refused = await signedIn.GetAsync(page);
            Assert.NotEqual(HttpStatusCode.OK, refused.StatusCode);
            using HttpResponseMessage below = await stranger.GetAsync(link + page);
            Assert.Equal(HttpStatusCode.NotFound, below.StatusCode);
        }

        Assert.False((await app.Services.GetRequiredService<GetHorse>().ExecuteAsync(app.Trainer, horse)).Succeeded);

        TrailPage trail = (await app.Services.GetRequiredService<GetTrail>().ExecuteAsync(app.Vet, new TrailFilter())).Value;
        Assert.Equal(
            [
                "Tess Lunge GET /horses/{Id:guid}",
                "Tess Lunge GET /people",
                "Tess Lunge GetHorse",
                "Trainer Larch GET /horses/{Id:guid}",
                "Trainer Larch GET /people",
            ],
            trail
                .Lines.Where(line => line.Event == AccessEvent.RightRefused)
                .Select(line => $"{line.By} {line.UseCase}")
                .Order(StringComparer.Ordinal)
        );
    }
}
