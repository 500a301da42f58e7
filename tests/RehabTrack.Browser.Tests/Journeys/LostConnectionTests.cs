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
}
