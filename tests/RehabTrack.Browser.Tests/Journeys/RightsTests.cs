using Microsoft.Playwright;
using RehabTrack.Browser.Tests.EveryPage;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>A right that is taken away while its page is open ends at the next click there.</summary>
[Collection(BrowserCollection.Name)]
public sealed class RightsTests(ChromiumFixture chromium, OwnDemoFixture demo) : IClassFixture<OwnDemoFixture>
{
    [Fact]
    public async Task An_assistant_who_becomes_an_owner_saves_nothing_more_on_the_page_that_is_open()
    {
        await using Visit assistant = await chromium.VisitAsAsync(demo.App, "Assistant");
        await DemoPages.OpenBelowHorseAsync(assistant, "Quillon", "/edit");
        await assistant.Page.Locator("#use").FillAsync("kept by the assistant");

        await using Visit vet = await chromium.VisitAsAsync(demo.App, "Vet");
        await vet.OpenAsync("/people");
        await vet.Page.GetByRole(AriaRole.Link, new() { Name = "Bryony Castor" }).First.ClickAsync();
        await vet.Page.Locator("#role").SelectOptionAsync(new SelectOptionValue { Label = "owner" });
        await vet.Page.GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();
        await Assertions.Expect(vet.Page.Locator("[role=status]").First).ToBeVisibleAsync();
        Assert.Empty(vet.Complaints);

        await assistant.Page.GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();

        await Assertions
            .Expect(assistant.Page.Locator("main"))
            .ToContainTextAsync("You are signed out, or your role has changed, and nothing was saved.");
        await Assertions.Expect(assistant.Page.Locator("#use")).ToHaveValueAsync("kept by the assistant");
        await DemoPages.OpenHorseAsync(vet, "Quillon");
        await Assertions.Expect(vet.Page.Locator("main")).Not.ToContainTextAsync("kept by the assistant");
    }
}
