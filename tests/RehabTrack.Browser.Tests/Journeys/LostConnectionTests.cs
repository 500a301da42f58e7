using Microsoft.Playwright;
using RehabTrack.Browser.Tests.EveryPage;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>The network goes while a number is being typed.</summary>
[Collection(BrowserCollection.Name)]
public sealed class LostConnectionTests(ChromiumFixture chromium, DemoFixture demo)
{
    // What the framework does when the server no longer answers.
    private const string Lose = """
        () => {
          const box = document.getElementById("components-reconnect-modal");
          box.classList.add("components-reconnect-show");
          box.dispatchEvent(new CustomEvent("components-reconnect-state-changed", { detail: { state: "show" } }));
        }
        """;

    [Fact]
    public async Task The_box_that_says_so_does_not_take_the_hands_off_the_cell()
    {
        await using Visit visit = await chromium.VisitAsAsync(demo.App, "Vet");
        await DemoPages.OpenEntryAsync(visit, "Brimble Hob");
        ILocator cell = visit.Page.Locator("input[data-field]:focus");
        string field = (await cell.GetAttributeAsync("data-field"))!;
        ILocator named = visit.Page.Locator($"input[data-field='{field}']");

        await visit.Page.Keyboard.TypeAsync("1");
        await visit.Page.EvaluateAsync(Lose);
        await Assertions.Expect(visit.Page.Locator("#components-reconnect-modal")).ToBeVisibleAsync();
        await visit.Page.Keyboard.TypeAsync(",33");

        await Assertions.Expect(named).ToBeFocusedAsync();
        await Assertions.Expect(named).ToHaveValueAsync("1,33");
    }

    [Fact]
    public async Task A_decision_that_was_being_written_is_back_when_the_page_had_to_be_opened_anew()
    {
        await using Visit visit = await chromium.VisitAsAsync(demo.App, "Vet");
        await DemoPages.OpenBelowHorseAsync(visit, "Quillon", "/decision");
        await visit.Page.Locator("#visit-note").FillAsync("a little stiff to the left");
        await visit.Page.Locator("button[data-kind=Hold]").ClickAsync();
        await visit.Page.Locator("#decision-reason").FillAsync("as the scan says");
        await visit.Page.Locator("#limit-trot").FillAsync("12");

        await visit.Page.ReloadAsync();
        await visit.WaitUntilLiveAsync();

        await Assertions.Expect(visit.Page.Locator("#decision-reason")).ToHaveValueAsync("as the scan says");
        await Assertions.Expect(visit.Page.Locator("#limit-trot")).ToHaveValueAsync("12");
        await Assertions.Expect(visit.Page.Locator("#visit-note")).ToHaveValueAsync("a little stiff to the left");
        await Assertions.Expect(visit.Page.Locator("button[data-kind=Hold]")).ToHaveAttributeAsync("aria-pressed", "true");

        await visit.Page.Locator(".typed-keeper .notice button").ClickAsync();
        await visit.WaitUntilLiveAsync();
        await Assertions.Expect(visit.Page.Locator("#visit-note")).ToHaveValueAsync("");
        Assert.Empty(visit.Complaints);
    }
}
