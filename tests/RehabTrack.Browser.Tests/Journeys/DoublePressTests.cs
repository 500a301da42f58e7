using Microsoft.Playwright;
using RehabTrack.Browser.Tests.EveryPage;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>A button is pressed twice, as cold hands do; the second press comes before the answer to the first.</summary>
[Collection(BrowserCollection.Name)]
public sealed class DoublePressTests(ChromiumFixture chromium, OwnDemoFixture demo) : IClassFixture<OwnDemoFixture>
{
    [Fact]
    public async Task A_report_is_released_once_and_of_its_link_the_one_that_is_shown_opens_it()
    {
        await using Visit vet = await chromium.VisitAsAsync(demo.App, "Vet");
        await DemoPages.OpenCaseAsync(vet, "Linnet Minor");
        await vet.OpenAsync(new Uri(vet.Page.Url).AbsolutePath + "/reports");
        ILocator released = vet.Page.Locator("section[aria-labelledby=released] li");
        Assert.Equal(0, await released.CountAsync());

        await PressTwiceAsync(vet.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Release for ") }));
        await Assertions.Expect(vet.Page.Locator("section[aria-labelledby=release] [role=status] > .notice")).ToBeVisibleAsync();
        await vet.Page.ReloadAsync();
        await vet.WaitUntilLiveAsync();
        await Assertions.Expect(released).ToHaveCountAsync(1);

        ILocator line = vet.Page.Locator("section[aria-labelledby=links] li").Filter(new() { HasText = "Anselm Quoy, report" });
        await PressTwiceAsync(line.GetByRole(AriaRole.Button, new() { NameRegex = new("^Make a ") }));
        ILocator shown = vet.Page.Locator("#share-address");
        await Assertions.Expect(line.GetByRole(AriaRole.Button, new() { NameRegex = new("^Take ") })).ToBeEnabledAsync();
        string address = await shown.InputValueAsync();

        await using Visit reader = await chromium.VisitWithoutScriptAsync(demo.App, Screen.Phone);
        await reader.OpenStaticAsync(address);
        await Assertions.Expect(reader.Page.Locator("article.report")).ToContainTextAsync("Linnet Minor");
        Assert.Empty(vet.Complaints);
    }

    // Both clicks leave the browser before it hears anything.
    private static Task PressTwiceAsync(ILocator button) => button.EvaluateAsync("button => { button.click(); button.click(); }");
}
