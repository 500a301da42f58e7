using Microsoft.Playwright;
using OtpNet;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>The main job, as a newcomer does it: from a file of past examinations to a verdict, then a recheck that changes it.</summary>
[Collection(BrowserCollection.Name)]
public sealed class NewcomerTests(ChromiumFixture chromium)
{
    private const string Password = "heather-anvil-morning-7";

    [Fact]
    public async Task A_vet_sets_the_server_up_imports_a_file_reads_the_verdict_and_signs_a_recheck_that_changes_it()
    {
        await using RunningApp app = await RunningApp.StartAsync();
        await using Visit visit = await chromium.VisitAsync(app);
        IPage page = visit.Page;

        await FirstRunAsync(page, await app.SetUpCodeAsync());
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

    /// <summary>From an empty server to the start page: practice, first person, second step, recovery codes.</summary>
    private static async Task FirstRunAsync(IPage page, string code)
    {
        await page.GotoAsync("/");
        await page.Locator("#set-up-code").FillAsync(code);
        await page.Locator("#practice-name").FillAsync("Tarn Side Equine");
        await page.Locator("#phone").FillAsync("+43 1 5550 177");
        await page.Locator("#person-name").FillAsync("Ida Fell");
        await page.Locator("#role").SelectOptionAsync("Vet");
        await page.Locator("#sign-in-name").FillAsync("ida@example.org");
        await page.Locator("#new-password").FillAsync(Password);
        await page.Locator("#new-password-again").FillAsync(Password);
        await page.Keyboard.PressAsync("Enter");
        string key = await page.Locator("[data-key]").InnerTextAsync();
        Totp app = new(Base32Encoding.ToBytes(key.Replace(" ", "", StringComparison.Ordinal)));
        await page.Locator("#code").FillAsync(app.ComputeTotp());
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("[data-recovery]")).ToHaveCountAsync(10);
        await page.Locator("form button[type=submit]").ClickAsync();
        await page.Locator("[data-interactive=true]").WaitForAsync();
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
        await question.FillAsync(Password);
        await page.Keyboard.PressAsync("Enter");
        await question.WaitForAsync(new() { State = WaitForSelectorState.Detached });
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
        await ConfirmAsync(page);
        await page.Locator("#sign").WaitForAsync(new() { State = WaitForSelectorState.Detached });
    }
}
