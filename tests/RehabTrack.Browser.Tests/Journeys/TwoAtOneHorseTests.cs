using Microsoft.Playwright;
using RehabTrack.Browser.Tests.EveryPage;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>Two people have one horse open, and both save it.</summary>
[Collection(BrowserCollection.Name)]
public sealed class TwoAtOneHorseTests(ChromiumFixture chromium, OwnDemoFixture demo) : IClassFixture<OwnDemoFixture>
{
    [Theory]
    [InlineData("desktop", "Tansy Fathom")]
    [InlineData("phone", "Quillon")]
    public async Task Who_saves_second_loses_nothing_and_chooses_where_both_wrote_with_the_keyboard(string screen, string horse)
    {
        await using Visit second = await chromium.VisitAsync(demo.App, Screen.Named(screen));
        await second.SignInByNameAsync("Tamsin Orrel");
        await DemoPages.OpenBelowHorseAsync(second, horse, "/edit");
        string address = new Uri(second.Page.Url).AbsolutePath;
        await second.Page.Locator("#use").FillAsync("hacking and hills");
        await second.Page.Locator("#markings").FillAsync("a star");

        await using Visit first = await chromium.VisitAsync(demo.App);
        await first.SignInByNameAsync("Ivo Penhallick");
        await first.OpenAsync(address);
        await first.Page.Locator("#use").FillAsync("driving");
        await first.Page.Locator("#birth-year").FillAsync("2009");
        await SaveAsync(first);
        await first.Page.WaitForURLAsync(url => !url.EndsWith("/edit", StringComparison.Ordinal));

        await SaveAsync(second);

        // It is said who it was and what came over, and the reader is led there; what was typed is where it was.
        ILocator notice = second.Page.Locator(".met[role=alert]");
        await Assertions.Expect(notice).ToContainTextAsync("Ivo Penhallick saved a change");
        await Assertions.Expect(notice).ToContainTextAsync(": 2009");
        await Assertions.Expect(notice).ToBeFocusedAsync();
        await Assertions.Expect(second.Page.Locator("#birth-year")).ToHaveValueAsync("2009");
        await Assertions.Expect(second.Page.Locator("#markings")).ToHaveValueAsync("a star");
        await Assertions.Expect(second.Page.Locator("#use")).ToHaveValueAsync("hacking and hills");
        ILocator choice = second.Page.GetByRole(AriaRole.Group, new() { Name = "both of you changed it" });
        await Assertions.Expect(choice).ToHaveCountAsync(1);
        await Assertions.Expect(choice).ToContainTextAsync("driving");
        await AssertNoBarriersAsync(second);

        // Not sent before it is chosen; nothing is chosen beforehand.
        await SaveAsync(second);
        await Assertions.Expect(notice).ToContainTextAsync("Choose at each field, then save.");
        await Assertions.Expect(second.Page.Locator("#use-mine")).Not.ToBeCheckedAsync();
        await Assertions.Expect(second.Page.Locator("#use-theirs")).Not.ToBeCheckedAsync();

        await second.Page.Locator("#use").FocusAsync();
        await second.Page.Keyboard.PressAsync("Tab");
        await Assertions.Expect(second.Page.Locator("#use-mine")).ToBeFocusedAsync();
        await second.Page.Keyboard.PressAsync("ArrowDown");
        await Assertions.Expect(second.Page.Locator("#use")).ToHaveValueAsync("driving");
        await second.Page.Keyboard.PressAsync("ArrowUp");
        await Assertions.Expect(second.Page.Locator("#use")).ToHaveValueAsync("hacking and hills");
        await SaveAsync(second);
        await second.Page.WaitForURLAsync(url => !url.EndsWith("/edit", StringComparison.Ordinal));

        await first.OpenAsync(address);
        await Assertions.Expect(first.Page.Locator("#use")).ToHaveValueAsync("hacking and hills");
        await Assertions.Expect(first.Page.Locator("#birth-year")).ToHaveValueAsync("2009");
        await Assertions.Expect(first.Page.Locator("#markings")).ToHaveValueAsync("a star");
        Assert.Empty(first.Complaints);
        Assert.Empty(second.Complaints);
    }

    private static Task SaveAsync(Visit visit) => visit.Page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();

    private static async Task AssertNoBarriersAsync(Visit visit)
    {
        foreach (ColorScheme scheme in (ColorScheme[])[ColorScheme.Light, ColorScheme.Dark])
        {
            await visit.Page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = scheme });
            Assert.Empty(await Barriers.OnAsync(visit.Page));
            Assert.Equal(
                visit.Page.ViewportSize!.Width,
                await visit.Page.EvaluateAsync<int>("() => Math.max(document.documentElement.scrollWidth, window.innerWidth)")
            );
        }
    }
}
