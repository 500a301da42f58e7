using Microsoft.Playwright;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>The main job, as a newcomer does it: from a file of past examinations to a verdict, then a recheck that changes it.</summary>
[Collection(BrowserCollection.Name)]
public sealed class NewcomerTests(ChromiumFixture chromium)
{
    [Fact]
    public async Task A_vet_sets_the_server_up_imports_a_file_reads_the_verdict_and_signs_a_recheck_that_changes_it()
    {
        await using RunningApp app = await RunningApp.StartAsync();
        await using Visit visit = await chromium.VisitAsync(app);
        IPage page = visit.Page;

        await FirstSteps.FirstRunAsync(page, await app.SetUpCodeAsync());
        await FirstSteps.ImportAsync(visit);
        await page.GetByRole(AriaRole.Link, new() { Name = OwnSheet.Horse }).First.ClickAsync();
        ILocator verdict = page.Locator(".verdict .say");
        await verdict.GetByText("Healing:").WaitForAsync();
        string before = await verdict.InnerTextAsync();
        Assert.EndsWith("which is more than measurement error explains.", before.Trim(), StringComparison.Ordinal);

        string casePage = page.Url;
        await FirstSteps.EnterRecheckByKeyboardAsync(page);
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.PressAsync("Enter");
        await ConfirmAsync(page);
        await page.Locator("#sign").WaitForAsync(new() { State = WaitForSelectorState.Detached });

        await visit.OpenAsync(new Uri(casePage).AbsolutePath);
        await verdict.GetByText("Worsening:").WaitForAsync();
        Assert.NotEqual(before, await verdict.InnerTextAsync());
        Assert.Empty(visit.Complaints);
    }

    /// <summary>What is signed asks who signs; a wrong password signs nothing.</summary>
    private static async Task ConfirmAsync(IPage page)
    {
        ILocator question = page.Locator("#confirm-password");
        await Assertions.Expect(question).ToBeFocusedAsync();
        await page.Keyboard.TypeAsync("not this one");
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("#confirm-password-error").WaitForAsync();
        await Assertions.Expect(question).ToHaveValueAsync(string.Empty);
        await question.FillAsync(FirstSteps.Password);
        await page.Keyboard.PressAsync("Enter");
        await question.WaitForAsync(new() { State = WaitForSelectorState.Detached });
    }
}
