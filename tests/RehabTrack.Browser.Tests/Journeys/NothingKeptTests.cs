using Microsoft.Playwright;
using RehabTrack.Browser.Tests.EveryPage;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>A browser that keeps nothing, because it may not or has no room left: what is typed is sent all the same, and the page says so.</summary>
[Collection(BrowserCollection.Name)]
public sealed class NothingKeptTests(ChromiumFixture chromium, OwnDemoFixture demo) : IClassFixture<OwnDemoFixture>
{
    private const string Blocked = """
        Object.defineProperty(window, "localStorage", { get() { throw new DOMException("blocked", "SecurityError"); } });
        """;

    private const string Full = """
        Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); };
        """;

    private const string Sentence = "Nothing is kept in this browser";

    [Theory]
    [InlineData(Blocked, "Brimble Hob")]
    [InlineData(Full, "Old Saltmarsh")]
    public async Task A_cell_of_the_grid_is_saved_when_the_typing_rests_and_the_page_says_that_nothing_is_kept(string storage, string horse)
    {
        await using CutLine line = new(demo.App);
        await using Visit visit = await chromium.VisitAsync(line, Screen.Desktop);
        await visit.Page.AddInitScriptAsync(storage);
        await visit.SignInAsync("Vet");
        await DemoPages.OpenEntryAsync(visit, horse);
        await Assertions.Expect(visit.Page.Locator(".entry .notice.not-kept")).ToContainTextAsync(Sentence);
        ILocator cell = visit.Page.Locator("table.entry-grid input[data-field*='LigamentArea']").First;
        string field = (await cell.GetAttributeAsync("data-field"))!;

        // The cell keeps the focus: nothing but the rest after the last key sends it.
        await cell.FillAsync("1,38");
        await Assertions.Expect(visit.Page.Locator(".entry[data-state=sending]")).ToHaveCountAsync(1);
        await Assertions.Expect(visit.Page.Locator(".entry[data-state=sent]")).ToHaveCountAsync(1, Patient);
        await using Visit other = await chromium.VisitAsync(demo.App, Screen.Phone);
        await other.SignInAsync("Vet");
        await other.OpenAsync(new Uri(visit.Page.Url).AbsolutePath);
        await Assertions.Expect(other.Page.Locator($"[data-field='{field}']")).ToHaveValueAsync("1,38");
        await Assertions.Expect(other.Page.Locator(".notice.not-kept")).ToBeHiddenAsync();

        // Without a network the page alone has it, and does not say otherwise. (The framework complains of the line that broke.)
        AssertNoScriptBroke(visit);
        line.Cut();
        await cell.FillAsync("1,39");
        ILocator state = visit.Page.Locator(".entry-state");
        await Assertions.Expect(state).ToContainTextAsync("Leave this page open.", new() { UseInnerText = true, Timeout = 60_000 });
        Assert.DoesNotContain("kept on this device", await state.InnerTextAsync(), StringComparison.Ordinal);
        line.Mend();
        await Assertions.Expect(visit.Page.Locator(".entry[data-state=sent]")).ToHaveCountAsync(1, Patient);
        await other.Page.ReloadAsync();
        await Assertions.Expect(other.Page.Locator($"[data-field='{field}']")).ToHaveValueAsync("1,39");
    }

    [Theory]
    [InlineData(Blocked, "Quillon")]
    [InlineData(Full, "Tansy Fathom")]
    public async Task A_decision_is_kept_by_the_server_and_the_page_says_that_nothing_is_kept(string storage, string horse)
    {
        await using Visit visit = await chromium.VisitAsync(demo.App);
        await visit.Page.AddInitScriptAsync(storage);
        await visit.SignInAsync("Vet");
        await DemoPages.OpenBelowHorseAsync(visit, horse, "/decision");
        await Assertions
            .Expect(visit.Page.Locator(".typed-keeper > .not-kept"))
            .ToContainTextAsync(Sentence, new() { UseInnerText = true });
        await visit.Page.Locator("#visit-note").FillAsync("short in front on the hard");

        await using Visit phone = await chromium.VisitAsync(demo.App, Screen.Phone);
        await phone.SignInAsync("Vet");
        string address = new Uri(visit.Page.Url).AbsolutePath;
        ILocator note = phone.Page.Locator("#visit-note");
        using CancellationTokenSource patience = new(TimeSpan.FromMinutes(1));
        do
        {
            patience.Token.ThrowIfCancellationRequested();
            await phone.OpenAsync(address);
        } while (await note.InputValueAsync() != "short in front on the hard");

        await Assertions.Expect(phone.Page.Locator(".typed-keeper > .not-kept")).ToBeHiddenAsync();
        AssertNoScriptBroke(visit);
    }

    [Theory]
    [InlineData(Blocked, "Ironbell", "12")]
    [InlineData(Full, "Brimble Hob", "14")]
    public async Task A_log_pressed_without_a_network_stays_on_its_page_and_is_sent_once_when_it_is_back(
        string storage,
        string horse,
        string minutes
    )
    {
        await using CutLine line = new(demo.App);
        await using Visit visit = await chromium.VisitAsync(line, Screen.Phone);
        await visit.Page.AddInitScriptAsync(storage);
        await visit.SignInByNameAsync("Wilf Arkendale");
        ILocator permit = visit.Page.Locator("article.permit").Filter(new() { HasText = horse });
        await permit.Locator("a[href$='/log']").ClickAsync();
        await Assertions.Expect(visit.Page.Locator("[data-unsent-none]")).ToContainTextAsync(Sentence);
        await visit.Page.Locator("#walk").FillAsync(minutes);

        line.Cut();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Log this day" }).ClickAsync();
        ILocator box = visit.Page.Locator("[data-unsent]");
        await Assertions.Expect(box).ToContainTextAsync($"{horse}: the log of a day");
        Assert.Contains("as long as this page stays open", await box.InnerTextAsync(), StringComparison.Ordinal);
        Assert.DoesNotContain("kept in this browser", await box.InnerTextAsync(), StringComparison.Ordinal);
        await Assertions.Expect(visit.Page.Locator("#walk")).ToHaveValueAsync(minutes);
        line.Mend();
        await visit.Page.Locator("[data-unsent-send]").ClickAsync();

        await Assertions.Expect(visit.Page.Locator("[data-unsent-sent]")).ToBeVisibleAsync();
        await visit.OpenStaticAsync("/yard");
        await Assertions.Expect(permit).ToContainTextAsync($"Logged today: walk {minutes} min.");
        AssertNoScriptBroke(visit);
    }

    private static LocatorAssertionsToHaveCountOptions Patient => new() { Timeout = 60_000 };

    private static void AssertNoScriptBroke(Visit visit) =>
        Assert.DoesNotContain(visit.Complaints, complaint => complaint.StartsWith("script", StringComparison.Ordinal));
}
