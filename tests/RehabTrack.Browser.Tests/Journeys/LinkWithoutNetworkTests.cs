using Microsoft.Playwright;
using RehabTrack.Browser.Tests.EveryPage;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>A trainer with a share link, in a yard where the network comes and goes.</summary>
[Collection(BrowserCollection.Name)]
public sealed class LinkWithoutNetworkTests(ChromiumFixture chromium, OwnDemoFixture demo) : IClassFixture<OwnDemoFixture>
{
    private const string Trainer = "Wilf Arkendale";

    [Fact]
    public async Task A_log_is_kept_told_and_sent_once()
    {
        await using CutLine line = new(demo.App);
        await using Visit visit = await OpenAsync(line);
        string home = visit.Page.Url;
        await Horse(visit, "Ironbell").Locator("a[href$='/log']").ClickAsync();
        await visit.Page.Locator("#walk").FillAsync("13");

        line.Cut();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Log this day" }).ClickAsync();
        await Assertions.Expect(Box(visit)).ToContainTextAsync("Ironbell: the log of a day");
        Assert.Equal(["/log"], await SendAsync(visit, line));

        await visit.OpenStaticAsync(home);
        await Assertions.Expect(Horse(visit, "Ironbell")).ToContainTextAsync("Logged today: walk 13 min.");
    }

    [Fact]
    public async Task A_log_kept_by_a_browser_that_was_closed_is_sent_when_the_link_is_opened_again()
    {
        await using CutLine line = new(demo.App);
        await using Visit visit = await OpenAsync(line);
        IBrowserContext browser = visit.Page.Context;
        string home = visit.Page.Url;
        await Horse(visit, "Tansy Fathom").Locator("a[href$='/log']").ClickAsync();
        await visit.Page.Locator("#walk").FillAsync("16");
        line.Cut();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Log this day" }).ClickAsync();
        await Assertions.Expect(Box(visit)).ToBeVisibleAsync();

        // What lasts as long as the browser is open, the cookie of the forms among it, is gone.
        await visit.Page.CloseAsync();
        await browser.ClearCookiesAsync();
        line.Mend();
        await using Visit again = new(await browser.NewPageAsync(), ownsContext: false);
        await again.OpenStaticAsync(home);

        await Assertions.Expect(again.Page.Locator("[data-unsent-sent]")).ToBeVisibleAsync();
        await again.OpenStaticAsync(home);
        await Assertions.Expect(Horse(again, "Tansy Fathom")).ToContainTextAsync("Logged today: walk 16 min.");
    }

    [Fact]
    public async Task A_tap_on_done_as_permitted_is_kept_told_and_sent_once()
    {
        await using CutLine line = new(demo.App);
        // The horses of somebody else: what the other tests log and report takes this button away.
        await using Visit visit = await OpenAsync(line, "Oona Treske");
        ILocator horse = visit.Page.Locator("article.permit").Filter(new() { Has = visit.Page.Locator("form[action$='/done']") }).First;
        string name = await horse.Locator("h2").InnerTextAsync();
        string walk = await horse.Locator("form[action$='/done'] input[name=walk]").InputValueAsync();

        line.Cut();
        await horse.Locator("form[action$='/done'] button").ClickAsync();
        await Assertions.Expect(Box(visit)).ToContainTextAsync($"{name}: the log of a day");
        Assert.Equal(["/done"], await SendAsync(visit, line));

        await visit.Page.ReloadAsync();
        await Assertions.Expect(Horse(visit, name)).ToContainTextAsync($"Logged today: walk {walk} min");
        await Assertions.Expect(Horse(visit, name).Locator("form[action$='/done']")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_tap_on_checked_is_kept_told_and_sent_once()
    {
        await using CutLine line = new(demo.App);
        await using Visit visit = await OpenAsync(line);
        ILocator form = Horse(visit, "Brimble Hob").Locator("form[action$='/checked-none']");

        line.Cut();
        await form.Locator("button").ClickAsync();
        await Assertions.Expect(Box(visit)).ToContainTextAsync("Brimble Hob: the log of a day");
        Assert.Equal(["/checked-none"], await SendAsync(visit, line));

        await visit.Page.ReloadAsync();
        await Assertions.Expect(Horse(visit, "Brimble Hob")).ToBeVisibleAsync();
        await Assertions.Expect(form).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_tap_that_was_kept_and_is_refused_is_not_told_as_sent()
    {
        await using CutLine line = new(demo.App);
        await using Visit visit = await OpenAsync(line);
        ILocator form = Horse(visit, "Pepperwick").Locator("form[action$='/checked-none']");
        await form.Locator("input[name=date]").EvaluateAsync("field => { field.value = '2099-01-01'; }");

        line.Cut();
        await form.Locator("button").ClickAsync();
        await Assertions.Expect(Box(visit)).ToContainTextAsync("Pepperwick: the log of a day");
        line.Mend();
        await visit.Page.Locator("[data-unsent-send]").ClickAsync();

        await Assertions.Expect(Box(visit)).ToContainTextAsync("It was not taken: call the practice.");
        await AssertSaysCallAsync(visit);
        await Assertions.Expect(visit.Page.Locator("[data-unsent-sent]")).ToBeHiddenAsync();
    }

    [Fact]
    public async Task A_concern_that_is_not_sent_says_call_and_is_reported_once_though_the_first_answer_was_lost()
    {
        const string Words = "puffy above the fetlock";
        await using CutLine line = new(demo.App);
        await using Visit visit = await OpenAsync(line);
        string home = visit.Page.Url;
        await Horse(visit, "Ironbell").Locator("a.alarm").ClickAsync();
        await visit.Page.Locator("#words").FillAsync(Words);

        line.Cut();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Report it to the practice" }).ClickAsync();
        await Assertions.Expect(Box(visit)).ToContainTextAsync("Ironbell: a concern");
        await AssertSaysCallAsync(visit);

        line.Mend();
        int posts = 0;
        await visit.Page.RouteAsync(
            "**/concern/*",
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
        TaskCompletionSource lost = new(TaskCreationOptions.RunContinuationsAsynchronously);
        visit.Page.RequestFailed += (_, _) => lost.TrySetResult();
        await visit.Page.Locator("[data-unsent-send]").ClickAsync();
        await lost.Task.WaitAsync(TimeSpan.FromMinutes(1));
        await AssertSaysCallAsync(visit);
        await visit.Page.Locator("[data-unsent-send]").ClickAsync();
        await Assertions.Expect(visit.Page.Locator("[data-unsent-sent]")).ToBeVisibleAsync();
        Assert.Equal(2, posts);

        await visit.OpenStaticAsync(home);
        await Assertions.Expect(Horse(visit, "Ironbell")).ToContainTextAsync("A concern is open.");
        await using Visit vet = await chromium.VisitAsAsync(demo.App, "Vet");
        await DemoPages.OpenBelowHorseAsync(vet, "Ironbell", "/day");
        await Assertions.Expect(vet.Page.Locator("section.concerns").GetByText(Words)).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task A_concern_that_is_refused_says_call_and_keeps_its_words_in_sight()
    {
        await using CutLine line = new(demo.App);
        await using Visit visit = await OpenAsync(line);
        await Horse(visit, "Brimble Hob").Locator("a.alarm").ClickAsync();
        await visit.Page.Locator("#words").FillAsync("short on the right rein");
        // A new link ends the one that is open here.
        await NewLinkAsync();

        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Report it to the practice" }).ClickAsync();

        await Assertions.Expect(Box(visit)).ToContainTextAsync("It was not taken: call the practice.");
        await AssertSaysCallAsync(visit);
        await Assertions.Expect(visit.Page.Locator("#words")).ToHaveValueAsync("short on the right rein");
    }

    private static ILocator Box(Visit visit) => visit.Page.Locator("[data-unsent]");

    private static ILocator Horse(Visit visit, string name) => visit.Page.Locator("article.permit").Filter(new() { HasText = name });

    private static async Task AssertSaysCallAsync(Visit visit)
    {
        ILocator alarm = visit.Page.Locator("[data-unsent-alarm]");
        await Assertions.Expect(alarm).ToContainTextAsync("Call the practice");
        await Assertions.Expect(alarm.Locator("a[href^='tel:']")).ToBeVisibleAsync();
    }

    /// <summary>The network is back: what was posted until all is sent, by the end of its address.</summary>
    private static async Task<string[]> SendAsync(Visit visit, CutLine line)
    {
        List<string> posts = [];
        visit.Page.Request += (_, request) =>
        {
            if (request.Method == "POST")
            {
                posts.Add(request.Url[request.Url.LastIndexOf('/')..]);
            }
        };
        line.Mend();
        await visit.Page.Locator("[data-unsent-send]").ClickAsync();
        await Assertions.Expect(visit.Page.Locator("[data-unsent-sent]")).ToBeVisibleAsync();
        await Assertions.Expect(Box(visit)).ToBeHiddenAsync();
        return [.. posts];
    }

    private async Task<Visit> OpenAsync(CutLine line, string trainer = Trainer)
    {
        Visit visit = await chromium.VisitAsync(line, Screen.Phone);
        await visit.OpenStaticAsync(await NewLinkAsync(trainer));
        return visit;
    }

    private async Task<string> NewLinkAsync(string trainer = Trainer)
    {
        await using Visit vet = await chromium.VisitAsAsync(demo.App, "Vet");
        await DemoPages.OpenLinkAsync(vet, trainer);
        return new Uri(vet.Page.Url).AbsolutePath;
    }
}
