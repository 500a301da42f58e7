using Microsoft.Playwright;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>At the stable the network comes and goes: what was pressed is kept, told, and sent once.</summary>
[Collection(BrowserCollection.Name)]
public sealed class UnsentTests(ChromiumFixture chromium, OwnDemoFixture demo) : IClassFixture<OwnDemoFixture>
{
    [Fact]
    public async Task A_log_typed_without_a_network_is_shown_as_not_sent_and_sent_once_when_it_is_back()
    {
        await using Visit visit = await OpenAsync("Wilf Arkendale", "Ironbell", "a[href$='/log']");
        await visit.Page.Context.SetOfflineAsync(true);
        await visit.Page.Locator("#walk").FillAsync("13");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Log this day" }).ClickAsync();

        await Assertions.Expect(visit.Page.Locator("[data-unsent]")).ToContainTextAsync("Ironbell: the log of a day");
        await visit.Page.Context.SetOfflineAsync(false);

        await Assertions.Expect(visit.Page.Locator("[data-unsent-sent]")).ToBeVisibleAsync();
        await Assertions.Expect(visit.Page.Locator("[data-unsent]")).ToBeHiddenAsync();
        await visit.Page.GotoAsync("/yard");
        await Assertions.Expect(Horse(visit, "Ironbell")).ToContainTextAsync("Logged today: walk 13 min.");
    }

    [Fact]
    public async Task A_log_that_arrived_and_whose_answer_was_lost_is_not_logged_twice()
    {
        await using Visit visit = await OpenAsync("Wilf Arkendale", "Brimble Hob", "a[href$='/log']");
        int posts = 0;
        await visit.Page.RouteAsync(
            "**/log",
            async route =>
            {
                if (route.Request.Method == "POST" && Interlocked.Increment(ref posts) == 1)
                {
                    await route.FetchAsync(new() { MaxRedirects = 0 });
                    await route.AbortAsync();
                }
                else
                {
                    await route.ContinueAsync();
                }
            }
        );
        await visit.Page.Locator("#walk").FillAsync("11");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Log this day" }).ClickAsync();
        await visit.Page.Locator("[data-unsent-send]").ClickAsync();

        await Assertions.Expect(visit.Page.Locator("[data-unsent-sent]")).ToBeVisibleAsync();
        Assert.Equal(2, posts);
        await visit.Page.GotoAsync("/yard");
        await Assertions.Expect(Horse(visit, "Brimble Hob")).ToContainTextAsync("Logged today: walk 11 min.");
    }

    [Fact]
    public async Task A_concern_that_is_not_sent_says_call_with_the_number_and_what_is_typed_outlives_the_page()
    {
        await using Visit visit = await OpenAsync("Wilf Arkendale", "Pepperwick", "a.alarm");
        await visit.Page.Locator("#words").FillAsync("warm, right fore");
        await visit.Page.ReloadAsync();
        await Assertions.Expect(visit.Page.Locator("#words")).ToHaveValueAsync("warm, right fore");
        await Assertions.Expect(visit.Page.Locator("[data-unsent-typed]")).ToBeVisibleAsync();
        await visit.Page.Context.SetOfflineAsync(true);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Report it to the practice" }).ClickAsync();

        ILocator alarm = visit.Page.Locator("[data-unsent-alarm]");
        await Assertions.Expect(alarm).ToContainTextAsync("Call the practice");
        await Assertions.Expect(alarm.Locator("a[href^='tel:']")).ToBeVisibleAsync();
        await visit.Page.Context.SetOfflineAsync(false);
        await Assertions.Expect(visit.Page.Locator("[data-unsent-sent]")).ToBeVisibleAsync();

        await visit.Page.GotoAsync("/yard");
        await Assertions.Expect(Horse(visit, "Pepperwick")).ToContainTextAsync("A concern is open.");
        await Horse(visit, "Pepperwick").Locator("a.alarm").ClickAsync();
        await Assertions.Expect(visit.Page.Locator("#words")).ToHaveValueAsync("");
    }

    private static ILocator Horse(Visit visit, string name) => visit.Page.Locator("article.permit").Filter(new() { HasText = name });

    private async Task<Visit> OpenAsync(string person, string horse, string link)
    {
        Visit visit = await chromium.VisitAsync(demo.App, Screen.Phone);
        await visit.SignInByNameAsync(person);
        await Horse(visit, horse).Locator(link).ClickAsync();
        await visit.Page.Locator("form[data-unsent-typed-form]").WaitForAsync();
        return visit;
    }
}
