using Microsoft.Playwright;
using RehabTrack.Browser.Tests.EveryPage;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>What a vet saw when signing stays readable, and says when today's figures differ.</summary>
[Collection(BrowserCollection.Name)]
public sealed class SignedFiguresTests(ChromiumFixture chromium)
{
    [Fact]
    public async Task A_signature_that_rests_on_figures_amended_since_says_so_and_shows_both()
    {
        await using RunningApp app = await RunningApp.StartAsync("--demo");
        await using Visit visit = await chromium.VisitAsAsync(app, "Vet");
        IPage page = visit.Page;
        await DemoPages.OpenCaseAsync(visit, "Tansy Fathom");
        string casePage = new Uri(page.Url).AbsolutePath;
        ILocator section = page.Locator("section[aria-labelledby=seen]");
        ILocator latest = section.Locator("li").First;
        await Assertions.Expect(latest).ToContainTextAsync("as today");

        await AmendLatestAsync(visit);
        await visit.OpenAsync(casePage);

        // The amendment is a signature of its own; the one before it saw other figures.
        await Assertions.Expect(latest).ToContainTextAsync("Figures seen when amending on");
        await Assertions.Expect(latest).ToContainTextAsync("as today");
        ILocator before = section.Locator("li").Nth(1);
        await Assertions.Expect(before).ToContainTextAsync("today’s differ");
        await before.GetByRole(AriaRole.Link).ClickAsync();
        await Assertions.Expect(before.Locator(".seen-figures")).ToContainTextAsync("was amended.");
        await Assertions.Expect(before.Locator("td.told")).Not.ToHaveCountAsync(0);
        Assert.Contains("seen=", page.Url, StringComparison.Ordinal);

        await page.ReloadAsync();
        await Assertions.Expect(before.Locator(".seen-figures table")).ToBeVisibleAsync();
        await before.GetByRole(AriaRole.Link).ClickAsync();
        await Assertions.Expect(section.Locator("table")).ToHaveCountAsync(0);
        Assert.Empty(visit.Complaints);
    }

    private static async Task AmendLatestAsync(Visit visit)
    {
        IPage page = visit.Page;
        await page.Locator("section[aria-labelledby=examinations] tbody a").First.ClickAsync();
        await page.Locator("a[href$='?amend=1']").ClickAsync();
        ILocator lesions = page.Locator("input[data-field$='|LesionArea']");
        await lesions.First.WaitForAsync();
        int rows = await lesions.CountAsync();
        for (int row = 0; row < rows; row++)
        {
            if (await lesions.Nth(row).InputValueAsync() is { Length: > 0 } text && text != "0")
            {
                await lesions.Nth(row).FillAsync("0,05");
                await lesions.Nth(row).PressAsync("Tab");
            }
        }

        ILocator amend = page.Locator("section[aria-labelledby=amend]");
        await Assertions.Expect(amend.Locator(".before-after .verdict")).ToHaveCountAsync(2);
        await page.Locator("#reason").FillAsync("Read off the wrong sheet");
        await page.Locator("#reason").PressAsync("Tab");
        await amend.Locator("button.btn").First.ClickAsync();
        await amend.WaitForAsync(new() { State = WaitForSelectorState.Detached });
    }
}
