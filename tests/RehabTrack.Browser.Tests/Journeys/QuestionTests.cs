using Microsoft.Playwright;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>The question who signs: it holds keys and pointer, can be left, and however often is pressed, one signature comes of it.</summary>
[Collection(BrowserCollection.Name)]
public sealed class QuestionTests(ChromiumFixture chromium)
{
    [Fact]
    public async Task The_question_keeps_the_keys_is_left_by_escape_and_a_double_press_signs_once()
    {
        await using RunningApp app = await RunningApp.StartAsync();
        await using Visit visit = await chromium.VisitAsync(app);
        IPage page = visit.Page;
        await FirstSteps.FirstRunAsync(page, await app.SetUpCodeAsync());
        await FirstSteps.ImportAsync(visit);
        await page.GetByRole(AriaRole.Link, new() { Name = OwnSheet.Horse }).First.ClickAsync();
        string casePage = new Uri(page.Url).AbsolutePath;
        await FirstSteps.EnterRecheckByKeyboardAsync(page);

        ILocator sign = page.Locator("section[aria-labelledby=sign] button.btn");
        ILocator question = page.GetByRole(AriaRole.Dialog);
        ILocator password = page.Locator("#confirm-password");
        ILocator problems = page.Locator(".notice.red");
        await sign.DblClickAsync();
        await Assertions.Expect(password).ToBeFocusedAsync();
        await Assertions.Expect(question).ToHaveCountAsync(1);
        await Assertions.Expect(problems).ToHaveCountAsync(0);

        // The browser's own buttons come after the last field, and then the first again: never what is behind.
        for (int press = 0; press < 8; press++)
        {
            await page.Keyboard.PressAsync("Tab");
            Assert.True(
                await page.EvaluateAsync<bool>("document.activeElement === document.body || !!document.activeElement.closest('dialog')")
            );
        }

        await page.Keyboard.PressAsync("Escape");
        await question.WaitForAsync(new() { State = WaitForSelectorState.Detached });
        await Assertions.Expect(sign).ToBeEnabledAsync();

        await sign.ClickAsync();
        await Assertions.Expect(password).ToBeFocusedAsync();
        await page.GoBackAsync();
        await question.WaitForAsync(new() { State = WaitForSelectorState.Detached });
        await page.GoForwardAsync();
        await Assertions.Expect(sign).ToBeEnabledAsync();

        await sign.DblClickAsync();
        await password.FillAsync(FirstSteps.Password);
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("#sign").WaitForAsync(new() { State = WaitForSelectorState.Detached });
        await Assertions.Expect(question).ToHaveCountAsync(0);

        await visit.OpenAsync(casePage);
        await Assertions.Expect(page.Locator("section[aria-labelledby=examinations] tbody tr")).ToHaveCountAsync(5);
        await Assertions.Expect(page.Locator("section[aria-labelledby=seen] li")).ToHaveCountAsync(1);
        Assert.Empty(visit.Complaints);
    }
}
