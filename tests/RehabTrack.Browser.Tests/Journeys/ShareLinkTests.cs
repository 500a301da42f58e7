using Microsoft.Playwright;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>From the making of a link to its end, behind it a telephone that runs no script and has no cookie.</summary>
[Collection(BrowserCollection.Name)]
public sealed class ShareLinkTests(ChromiumFixture chromium, OwnDemoFixture demo) : IClassFixture<OwnDemoFixture>
{
    [Fact]
    public async Task A_trainer_logs_and_reports_behind_a_link_until_it_is_taken_back_while_its_page_is_open()
    {
        await using Visit vet = await chromium.VisitAsAsync(demo.App, "Vet");
        await vet.OpenAsync("/people");
        await vet.Page.GetByRole(AriaRole.Link, new() { Name = "Oona Treske" }).First.ClickAsync();
        await vet.Page.GetByRole(AriaRole.Button, new() { Name = "Make a link" }).ClickAsync();
        string address = await vet.Page.Locator("#share-address").InputValueAsync();
        await Assertions.Expect(vet.Page.Locator("svg.share-code")).ToBeVisibleAsync();
        await Assertions.Expect(vet.Page.GetByText("Not opened yet.")).ToBeVisibleAsync();

        await using Visit trainer = await chromium.VisitWithoutScriptAsync(demo.App, Screen.Phone);
        await trainer.Page.GotoAsync(address);
        ILocator horse = trainer.Page.Locator("article.permit").Filter(new() { HasText = "Linnet Minor" });
        await horse.Locator("a[href$='/log']").ClickAsync();
        await trainer.Page.Locator("#walk").FillAsync("15");
        await trainer.Page.GetByRole(AriaRole.Button, new() { Name = "Log this day" }).ClickAsync();
        await Assertions.Expect(horse).ToContainTextAsync("Logged today: walk 15 min.");
        await horse.Locator("a.alarm").ClickAsync();
        await trainer.Page.Locator("#words").FillAsync("warm, left hind");
        await trainer.Page.GetByRole(AriaRole.Button, new() { Name = "Report it to the practice" }).ClickAsync();
        await Assertions.Expect(horse).ToContainTextAsync("A concern is open.");
        Assert.StartsWith(address, trainer.Page.Url, StringComparison.Ordinal);
        Assert.Empty(trainer.Complaints);

        await vet.Page.ReloadAsync();
        await vet.WaitUntilLiveAsync();
        await Assertions.Expect(vet.Page.GetByText("Last opened")).ToBeVisibleAsync();
        Assert.DoesNotContain(address, await vet.Page.ContentAsync(), StringComparison.Ordinal);
        await vet.Page.GetByRole(AriaRole.Button, new() { Name = "Take the link back" }).ClickAsync();
        await Assertions.Expect(vet.Page.GetByText("No link has been made.")).ToBeVisibleAsync();
        Assert.Empty(vet.Complaints);

        await horse.Locator("a[href$='/away']").ClickAsync();
        await Assertions
            .Expect(trainer.Page.Locator("main"))
            .ToContainTextAsync("No work is signed. Do not use an older sheet. Call the practice");
        await Assertions.Expect(trainer.Page.Locator("main")).Not.ToContainTextAsync("Linnet Minor");
        await Assertions.Expect(trainer.Page.Locator(".demo-line")).ToBeVisibleAsync();
        IAPIResponse ended = await trainer.Page.APIRequest.GetAsync(address);
        IAPIResponse unknown = await trainer.Page.APIRequest.GetAsync(address[..^1] + (address[^1] == 'A' ? 'B' : 'A'));
        Assert.Equal((404, 404), (ended.Status, unknown.Status));
        Assert.Equal(await unknown.BodyAsync(), await ended.BodyAsync());
    }
}
