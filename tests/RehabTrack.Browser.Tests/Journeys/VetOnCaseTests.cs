using Microsoft.Playwright;
using RehabTrack.Browser.Tests.EveryPage;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>What a vet reads, says and signed on the page of a case.</summary>
[Collection(BrowserCollection.Name)]
public sealed class VetOnCaseTests(ChromiumFixture chromium, OwnDemoFixture demo) : IClassFixture<OwnDemoFixture>
{
    [Fact]
    public async Task The_lack_of_progress_the_overwork_and_the_decision_stand_on_one_page()
    {
        await using Visit visit = await chromium.VisitAsAsync(demo.App, "Vet");

        await DemoPages.OpenCaseAsync(visit, "Tansy Fathom");

        IPage page = visit.Page;
        await Assertions.Expect(page.Locator(".verdict .say")).ToContainTextAsync("No progress");
        // From the first look, three weeks after the injury, to the fifth recheck.
        await Assertions.Expect(page.Locator("section[aria-labelledby=examinations] tbody tr")).ToHaveCountAsync(6);
        ILocator healing = page.Locator("section.case-healing .desk-only");
        await Assertions.Expect(healing.Locator("path.over").First).ToBeVisibleAsync();
        await Assertions.Expect(healing.Locator(".event-text", new() { HasText = "step back" }).First).ToBeVisibleAsync();
        await Assertions.Expect(healing.Locator(".event-text", new() { HasText = "hold" }).First).ToBeVisibleAsync();
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task A_link_that_is_asked_about_is_settled_with_the_places_side_by_side_and_a_reason()
    {
        await using Visit visit = await chromium.VisitAsAsync(demo.App, "Vet");
        await DemoPages.OpenCaseAsync(visit, "Pepperwick");
        IPage page = visit.Page;
        ILocator asked = page.GetByRole(AriaRole.Link, new() { Name = "Settle it" });
        int before = await asked.CountAsync();
        Assert.True(before > 0);

        await asked.First.ClickAsync();
        ILocator panel = page.Locator(".reading-panel");
        await Assertions.Expect(panel.Locator(".mark.amber")).ToHaveTextAsync("Unsure link");
        await panel.GetByRole(AriaRole.Button, new() { Name = "Pin the link" }).ClickAsync();

        ILocator dialog = page.GetByRole(AriaRole.Dialog);
        ILocator choices = dialog.Locator("tbody tr");
        await Assertions.Expect(choices.Nth(1)).ToBeVisibleAsync();
        await Assertions.Expect(choices.First.Locator("input")).ToBeCheckedAsync();
        await Assertions.Expect(choices.First).ToContainTextAsync("%");
        ILocator pin = dialog.GetByRole(AriaRole.Button, new() { Name = "Pin the link" });
        await pin.ClickAsync();
        await Assertions.Expect(dialog.Locator("#link-reason-error")).ToContainTextAsync("Say why");

        await dialog.Locator("#link-reason").FillAsync("Same shape at both dates");
        await pin.ClickAsync();

        await Assertions.Expect(dialog).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator("section[aria-labelledby=words]")).ToContainTextAsync("Same shape at both dates");
        await Assertions.Expect(asked).ToHaveCountAsync(before - 1);
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task A_signature_that_rests_on_figures_amended_since_says_so_and_shows_both()
    {
        await using Visit visit = await chromium.VisitAsAsync(demo.App, "Vet");
        IPage page = visit.Page;
        await DemoPages.OpenCaseAsync(visit, "Brimble Hob");
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
