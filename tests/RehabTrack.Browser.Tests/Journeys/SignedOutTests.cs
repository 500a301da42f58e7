using Microsoft.Playwright;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>What was kept in the browser, and nobody is signed in any longer when it is to be sent.</summary>
[Collection(BrowserCollection.Name)]
public sealed class SignedOutTests(ChromiumFixture chromium, OwnDemoFixture demo) : IClassFixture<OwnDemoFixture>
{
    private const string SignInAgain = "sign in again as yourself, and it is sent";

    [Fact]
    public async Task A_log_kept_back_over_night_is_sent_once_after_its_person_has_signed_in_again()
    {
        await using CutLine line = new(demo.App);
        await using Visit visit = await chromium.VisitAsync(line, Screen.Phone);
        await visit.SignInByNameAsync("Wilf Arkendale");
        await Horse(visit, "Ironbell").Locator("a[href$='/log']").ClickAsync();
        await visit.Page.Locator("#walk").FillAsync("17");
        line.Cut();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Log this day" }).ClickAsync();
        await Assertions.Expect(Box(visit)).ToContainTextAsync("Ironbell: the log of a day");
        await EndSessionsOfAsync("Wilf Arkendale");
        line.Mend();
        await visit.Page.Locator("[data-unsent-send]").ClickAsync();
        ILocator signIn = Box(visit).GetByRole(AriaRole.Link, new() { Name = SignInAgain });
        await Assertions.Expect(signIn).ToBeVisibleAsync();
        await Assertions.Expect(visit.Page.Locator("[data-unsent-network]")).ToBeHiddenAsync();

        await signIn.ClickAsync();
        List<string> posts = Posts(visit);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Wilf Arkendale" }).ClickAsync();

        await Assertions.Expect(visit.Page.Locator("[data-unsent-sent]")).ToBeVisibleAsync();
        await Assertions.Expect(Box(visit)).ToBeHiddenAsync();
        Assert.Single(posts, post => post.EndsWith("/log", StringComparison.Ordinal));
        await visit.OpenStaticAsync("/yard");
        await Assertions.Expect(Horse(visit, "Ironbell")).ToContainTextAsync("Logged today: walk 17 min.");
        await visit.Page.Locator("body[data-who]").WaitForAsync();
        Assert.Single(posts, post => post.EndsWith("/log", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_log_pressed_after_the_session_ended_stays_on_its_page_and_is_sent_after_signing_in()
    {
        await using Visit visit = await chromium.VisitAsync(demo.App, Screen.Phone);
        await visit.SignInByNameAsync("Wilf Arkendale");
        await Horse(visit, "Brimble Hob").Locator("a[href$='/log']").ClickAsync();
        await EndSessionsOfAsync("Wilf Arkendale");
        await visit.Page.Locator("#walk").FillAsync("19");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Log this day" }).ClickAsync();
        await Box(visit).GetByRole(AriaRole.Link, new() { Name = SignInAgain }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Wilf Arkendale" }).ClickAsync();

        await Assertions.Expect(visit.Page.Locator("[data-unsent-sent]")).ToBeVisibleAsync();
        await visit.OpenStaticAsync("/yard");
        await Assertions.Expect(Horse(visit, "Brimble Hob")).ToContainTextAsync("Logged today: walk 19 min.");
    }

    [Fact]
    public async Task A_concern_of_one_person_is_not_sent_by_another_who_signs_in_at_the_same_browser()
    {
        await using Visit visit = await chromium.VisitAsync(demo.App, Screen.Phone);
        await visit.SignInByNameAsync("Oona Treske");
        await Horse(visit, "Quillon").Locator("a.alarm").ClickAsync();
        await EndSessionsOfAsync("Oona Treske");
        await visit.Page.Locator("#words").FillAsync("warm behind the cannon");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Report it to the practice" }).ClickAsync();
        ILocator signIn = Box(visit).GetByRole(AriaRole.Link, new() { Name = SignInAgain });
        await Assertions.Expect(signIn).ToBeVisibleAsync();
        ILocator alarm = visit.Page.Locator("[data-unsent-alarm]");
        await Assertions.Expect(alarm).ToContainTextAsync("Call the practice");
        await Assertions.Expect(alarm.Locator("a[href^='tel:']")).ToBeVisibleAsync();

        // The owner has the same horse and may report a concern about it; a vet may not come here at all.
        foreach (string another in (string[])["Marguerite Sallow", "Tamsin Orrel"])
        {
            await using Visit window = new(await visit.Page.Context.NewPageAsync(), ownsContext: false);
            await window.SignInByNameAsync(another);
            Task<IResponse> tried = visit.Page.WaitForResponseAsync(answer => answer.Request.Method == "POST");
            await visit.Page.Locator("[data-unsent-send]").ClickAsync();
            await tried;
            await Assertions.Expect(signIn).ToBeVisibleAsync();
            Assert.False(await HasConcernAsync("Quillon"));
        }

        await signIn.ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Oona Treske" }).ClickAsync();
        await Assertions.Expect(visit.Page.Locator("[data-unsent-sent]")).ToBeVisibleAsync();
        Assert.True(await HasConcernAsync("Quillon"));
    }

    private static ILocator Box(Visit visit) => visit.Page.Locator("[data-unsent]");

    private static ILocator Horse(Visit visit, string name) => visit.Page.Locator("article.permit").Filter(new() { HasText = name });

    private static List<string> Posts(Visit visit)
    {
        List<string> posts = [];
        visit.Page.Request += (_, request) =>
        {
            if (request.Method == "POST")
            {
                posts.Add(new Uri(request.Url).AbsolutePath);
            }
        };
        return posts;
    }

    /// <summary>The same person ends their other sessions from another device: the cookie is there, and worth nothing.</summary>
    private async Task EndSessionsOfAsync(string person)
    {
        await using Visit elsewhere = await chromium.VisitAsync(demo.App);
        await elsewhere.SignInByNameAsync(person);
        await elsewhere.OpenStaticAsync("/account");
        await elsewhere.Page.GetByRole(AriaRole.Button, new() { Name = "End all others" }).ClickAsync();
        await Assertions.Expect(elsewhere.Page.Locator("section[aria-labelledby=sessions] li")).ToHaveCountAsync(1);
    }

    private async Task<bool> HasConcernAsync(string horse)
    {
        await using Visit owner = await chromium.VisitAsync(demo.App, Screen.Phone);
        await owner.SignInByNameAsync("Marguerite Sallow");
        await Horse(owner, horse).WaitForAsync();
        return (await Horse(owner, horse).InnerTextAsync()).Contains("A concern is open.", StringComparison.Ordinal);
    }
}
