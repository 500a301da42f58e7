using Microsoft.Playwright;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>The main job, as a newcomer does it: from a file of past examinations to a verdict, then a recheck that changes it.</summary>
[Collection(BrowserCollection.Name)]
public sealed class NewcomerTests(ChromiumFixture chromium)
{
    [Fact]
    public async Task A_vet_imports_a_file_reads_the_verdict_and_enters_a_recheck_by_keyboard_that_changes_it()
    {
        await using RunningApp app = await RunningApp.StartAsync();
        await using Visit visit = await chromium.VisitAsAsync(app, "Vet");
        IPage page = visit.Page;

        await ImportAsync(visit);
        await page.GetByRole(AriaRole.Link, new() { Name = OwnSheet.Horse }).First.ClickAsync();
        ILocator verdict = page.Locator(".verdict .say");
        await verdict.GetByText("Healing:").WaitForAsync();
        string before = await verdict.InnerTextAsync();
        Assert.EndsWith("which is more than measurement error explains.", before.Trim(), StringComparison.Ordinal);

        string casePage = page.Url;
        await EnterRecheckByKeyboardAsync(page);

        await visit.OpenAsync(new Uri(casePage).AbsolutePath);
        await verdict.GetByText("Worsening:").WaitForAsync();
        Assert.NotEqual(before, await verdict.InnerTextAsync());
        Assert.Empty(visit.Complaints);
    }

    private static async Task ImportAsync(Visit visit)
    {
        IPage page = visit.Page;
        await visit.OpenAsync("/import");
        await page.Locator("input[type=file]").SetInputFilesAsync(OwnSheet.File());
        await page.Locator("form[action='/import/file'] button[type=submit]").ClickAsync();
        await visit.WaitUntilLiveAsync();
        // Nothing is written before this button: it says how much is new.
        await page.GetByRole(AriaRole.Button, new() { Name = "4 examinations" }).ClickAsync();
        await page.Locator(".verdict[role=status]").WaitForAsync();
    }

    /// <summary>From the case page to the signature without touching the pointer.</summary>
    private static async Task EnterRecheckByKeyboardAsync(IPage page)
    {
        await page.Locator("a[href$='/examinations/new']").First.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        // The grid starts from the levels of the last examination, with the first thing to measure in focus.
        ILocator cells = page.Locator("input[data-field$='|LigamentArea']");
        await Assertions.Expect(cells).ToHaveCountAsync(OwnSheet.LevelCount);
        await Assertions.Expect(cells.First).ToBeFocusedAsync();
        await Assertions.Expect(cells.First).ToHaveValueAsync(string.Empty);
        await Assertions.Expect(page.Locator("input[data-field$='|Level']").First).ToHaveValueAsync("12");
        foreach ((string ligament, string lesion) in OwnSheet.Recheck)
        {
            await page.Keyboard.TypeAsync(ligament);
            await page.Keyboard.PressAsync("Tab");
            await page.Keyboard.TypeAsync(lesion);
            await page.Keyboard.PressAsync("Enter");
        }

        // After the last row Enter goes on to checking and signing.
        await Assertions.Expect(page.Locator("[data-after-grid]")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#sign")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("#sign").WaitForAsync(new() { State = WaitForSelectorState.Detached });
    }
}
