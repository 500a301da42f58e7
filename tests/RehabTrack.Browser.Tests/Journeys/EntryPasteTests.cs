using Microsoft.Playwright;
using RehabTrack.Browser.Tests.EveryPage;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>Sizes that were noted in a spreadsheet are pasted into the grid at once, or not at all.</summary>
[Collection(BrowserCollection.Name)]
public sealed class EntryPasteTests(ChromiumFixture chromium, OwnDemoFixture demo) : IClassFixture<OwnDemoFixture>
{
    [Fact]
    public async Task A_block_of_cells_goes_right_and_down_and_is_kept_and_of_one_that_does_not_fit_nothing_is_spread()
    {
        await using Visit visit = await chromium.VisitAsAsync(demo.App, "Vet");
        await DemoPages.OpenEntryAsync(visit, "Ironbell");
        IPage page = visit.Page;
        ILocator ligament = page.Locator("input[data-field$='|LigamentArea']");
        ILocator lesion = page.Locator("input[data-field$='|LesionArea']");
        int rows = await ligament.CountAsync();

        await PasteAsync(ligament.First, "1,31\t0,12\r\n1,32\t0,22\r\n");

        await Assertions.Expect(ligament.Nth(1)).ToHaveValueAsync("1,32");
        await Assertions.Expect(lesion.Nth(1)).ToHaveValueAsync("0,22");
        await page.Locator(".entry[data-state=sent]").WaitForAsync();
        await page.ReloadAsync();
        await Assertions.Expect(lesion.First).ToHaveValueAsync("0,12");
        await Assertions.Expect(lesion.Nth(1)).ToHaveValueAsync("0,22");

        await page.Locator(".entry[data-state=sent]").WaitForAsync();
        await lesion.First.FillAsync("");
        await PasteAsync(lesion.First, string.Concat(Enumerable.Repeat("0,4\n", rows + 1)));
        await Assertions.Expect(lesion.Nth(1)).ToHaveValueAsync("0,22");
        await Assertions.Expect(lesion.First).ToHaveValueAsync("");
    }

    // As the browser hands over what stands in the clipboard; what the page does not take itself is the browser's to put in.
    private static Task PasteAsync(ILocator cell, string text) =>
        cell.EvaluateAsync(
            """
            (cell, text) => {
              const data = new DataTransfer();
              data.setData("text/plain", text);
              cell.focus();
              cell.dispatchEvent(new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }));
            }
            """,
            text
        );
}
