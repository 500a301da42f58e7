using Microsoft.Playwright;
using RehabTrack.Browser.Tests.EveryPage;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>The plug of the server is pulled under an examination, a plan and a decision that are being typed.</summary>
[Collection(BrowserCollection.Name)]
public sealed class ServerRestartTests(ChromiumFixture chromium, OwnDemoFixture demo) : IClassFixture<OwnDemoFixture>
{
    private static LocatorAssertionsToHaveValueOptions Patient => new() { Timeout = 60_000 };

    [Fact]
    public async Task What_was_typed_before_and_after_the_plug_was_pulled_is_there_again_and_is_kept_once()
    {
        await using Visit examination = await chromium.VisitAsync(demo.App);
        await examination.SignInByNameAsync("Tamsin Orrel");
        await DemoPages.OpenEntryAsync(examination, "Brimble Hob");
        ILocator cell = examination.Page.Locator("table.entry-grid input[data-field*='LigamentArea']").First;
        string field = (await cell.GetAttributeAsync("data-field"))!;
        ILocator named = examination.Page.Locator($"[data-field='{field}']");

        await using CutLine line = new(demo.App);
        await using Visit plan = await chromium.VisitAsync(line, Screen.Desktop);
        await plan.SignInByNameAsync("Tamsin Orrel");
        await DemoPages.OpenBelowHorseAsync(plan, "Quillon", "/plan/write");
        await plan.Page.Locator(".plan-start button").First.ClickAsync();
        await plan.Page.Locator("button[data-unfolds='step-1-']").ClickAsync();
        await plan.Page.Locator("#title").FillAsync("a plan of our own");
        await plan.Page.Locator("#title").BlurAsync();
        await plan.Page.WaitForFunctionAsync(IsTaken);
        bool hadGate = await plan.Page.Locator("#step-1-gate").IsCheckedAsync();

        await using Visit decision = await chromium.VisitAsync(demo.App);
        await decision.SignInByNameAsync("Tamsin Orrel");
        await DemoPages.OpenBelowHorseAsync(decision, "Tansy Fathom", "/decision");
        await decision.Page.Locator("#visit-note").FillAsync("short in front");

        // Nobody can notice yet that the line is gone: what is typed in this moment is heard by no one.
        line.Silence();
        await plan.Page.Locator("#step-1-walk").FillAsync("17");
        await plan.Page.Locator("#step-1-walk").BlurAsync();
        await plan.Page.Locator("#step-1-gate").ClickAsync();
        await plan.Page.Locator("#cap-day").FillAsync("90");
        await Assertions.Expect(plan.Page.Locator("#components-reconnect-modal")).ToBeHiddenAsync();
        await demo.App.KillAsync();
        await cell.FillAsync("1,37");
        await decision.Page.Locator("button[data-kind=Hold]").ClickAsync();
        await demo.App.StartAgainAsync();
        line.Cut();
        line.Mend();

        // A page whose server knows nothing of it any more is opened anew by itself.
        await Assertions.Expect(named).ToHaveValueAsync("1,37", Patient);
        await Assertions.Expect(examination.Page.Locator(".entry-state [data-state=sent]")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Assertions.Expect(plan.Page.Locator(".typed-keeper > .notice[role=status]")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Assertions.Expect(plan.Page.Locator("#step-1-walk")).ToHaveValueAsync("17", Patient);
        await Assertions.Expect(plan.Page.Locator("#cap-day")).ToHaveValueAsync("90");
        await plan.Page.WaitForFunctionAsync(IsTaken);
        await Assertions
            .Expect(decision.Page.Locator("button[data-kind=Hold]"))
            .ToHaveAttributeAsync("aria-pressed", "true", new() { Timeout = 60_000 });
        await Assertions.Expect(decision.Page.Locator("#visit-note")).ToHaveValueAsync("short in front");

        // Another device finds what the server has of it.
        await using Visit phone = await chromium.VisitAsync(demo.App, Screen.Phone);
        await phone.SignInByNameAsync("Tamsin Orrel");
        await phone.OpenAsync(new Uri(examination.Page.Url).AbsolutePath);
        await Assertions.Expect(phone.Page.Locator($"[data-field='{field}']")).ToHaveValueAsync("1,37");
        await phone.OpenAsync(new Uri(plan.Page.Url).AbsolutePath);
        await Assertions.Expect(phone.Page.Locator("#title")).ToHaveValueAsync("a plan of our own");
        await Assertions.Expect(phone.Page.Locator("#cap-day")).ToHaveValueAsync("90");
        await phone.Page.Locator("button[data-unfolds='step-1-']").ClickAsync();
        await Assertions.Expect(phone.Page.Locator("#step-1-walk")).ToHaveValueAsync("17");
        await Assertions.Expect(phone.Page.Locator("#step-1-gate")).ToBeCheckedAsync(new() { Checked = !hadGate });
    }

    // The browser minds what the server has not taken yet.
    private const string IsTaken = "() => !Object.keys(localStorage).some(key => key.startsWith('typed:plan:'))";
}
