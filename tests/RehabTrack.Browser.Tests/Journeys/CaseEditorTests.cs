using Microsoft.Playwright;
using RehabTrack.Browser.Tests.EveryPage;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>What is known of a case is corrected, and the case page goes by it.</summary>
[Collection(BrowserCollection.Name)]
public sealed class CaseEditorTests(ChromiumFixture chromium, DemoFixture demo)
{
    [Fact]
    public async Task A_distance_is_entered_with_a_comma_and_a_wrong_one_says_how_to_mend_it()
    {
        await using Visit visit = await chromium.VisitAsAsync(demo.App, "Vet");
        await DemoPages.OpenCaseEditorAsync(visit);
        ILocator distance = visit.Page.Locator("#hock-to-joint");
        ILocator save = visit.Page.GetByRole(AriaRole.Button, new() { Name = "Save" });
        await distance.FillAsync("65");
        await save.ClickAsync();
        await Assertions.Expect(visit.Page.Locator("main")).ToContainTextAsync("Write a number above 0 and up to 20.");
        await Assertions.Expect(distance).ToHaveValueAsync("65");

        await distance.FillAsync("6,5");
        await save.ClickAsync();

        await visit.Page.Locator(".case-ladder svg:visible").First.WaitForAsync();
        await visit.OpenAsync(new Uri(visit.Page.Url).AbsolutePath + "/edit");
        await Assertions.Expect(distance).ToHaveValueAsync("6.5");
        await distance.FillAsync("");
        await save.ClickAsync();
        await visit.Page.Locator(".case-ladder svg:visible").First.WaitForAsync();
        Assert.Empty(visit.Complaints);
    }
}
