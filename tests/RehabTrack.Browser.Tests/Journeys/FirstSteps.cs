using Microsoft.Playwright;
using OtpNet;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>What somebody does who begins on an empty server: first run, import, a recheck.</summary>
internal static class FirstSteps
{
    public const string Password = "heather-anvil-morning-7";

    /// <summary>From an empty server to the start page: practice, first person, second step, recovery codes.</summary>
    public static async Task FirstRunAsync(IPage page, string code)
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

    public static async Task ImportAsync(Visit visit)
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

    /// <summary>From the case page to what stands before the signature, without touching the pointer.</summary>
    public static async Task EnterRecheckByKeyboardAsync(IPage page)
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
    }
}
