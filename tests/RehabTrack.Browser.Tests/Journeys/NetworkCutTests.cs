using Microsoft.Playwright;
using RehabTrack.Browser.Tests.EveryPage;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>The network goes while a vet types beside the horse; the page was open before.</summary>
[Collection(BrowserCollection.Name)]
public sealed class NetworkCutTests(ChromiumFixture chromium, OwnDemoFixture demo) : IClassFixture<OwnDemoFixture>
{
    private const string ReadKept = "() => Object.keys(localStorage).filter(key => key.startsWith('rehabtrack.draft.')).length";

    [Fact]
    public async Task What_is_typed_into_the_grid_stays_is_told_as_not_sent_and_goes_once_when_the_network_is_back()
    {
        await using CutLine line = new(demo.App);
        await using Visit visit = await chromium.VisitAsync(line, Screen.Desktop);
        await visit.SignInAsync("Vet");
        await DemoPages.OpenEntryAsync(visit, "Brimble Hob");
        ILocator[] cells = await FirstCellsAsync(visit.Page);
        await cells[0].FillAsync("1,37");
        await Assertions.Expect(State(visit, "sent")).ToBeVisibleAsync(new() { Timeout = 60_000 });

        line.Cut();
        await cells[1].FillAsync("0,21");
        await cells[2].FillAsync("1,44");
        await Assertions.Expect(State(visit, "not-sent")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Assertions.Expect(cells[1]).ToHaveValueAsync("0,21");
        Assert.Equal(1, await visit.Page.EvaluateAsync<int>(ReadKept));

        line.Mend();
        await Assertions.Expect(State(visit, "sent")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        Assert.Equal(0, await visit.Page.EvaluateAsync<int>(ReadKept));
        await Assertions.Expect(visit.Page.Locator("section.conflict")).ToHaveCountAsync(0);

        // Another device of the same person has it all, each number once.
        await using Visit other = await chromium.VisitAsync(demo.App, Screen.Phone);
        await other.SignInAsync("Vet");
        await other.OpenAsync(new Uri(visit.Page.Url).AbsolutePath);
        foreach ((ILocator cell, string text) in cells.Zip(["1,37", "0,21", "1,44"]))
        {
            string field = (await cell.GetAttributeAsync("data-field"))!;
            await Assertions.Expect(other.Page.Locator($"[data-field='{field}']")).ToHaveValueAsync(text);
        }
    }

    [Fact]
    public async Task What_was_typed_without_a_network_is_back_when_the_page_had_to_be_closed()
    {
        await using CutLine line = new(demo.App);
        await using Visit visit = await chromium.VisitAsync(line, Screen.Desktop);
        await visit.SignInByNameAsync("Tamsin Orrel");
        await DemoPages.OpenEntryAsync(visit, "Old Saltmarsh");
        ILocator[] cells = await FirstCellsAsync(visit.Page);
        string address = new Uri(visit.Page.Url).AbsolutePath;
        string field = (await cells[1].GetAttributeAsync("data-field"))!;
        line.Cut();
        await cells[1].FillAsync("0,33");
        await Assertions.Expect(State(visit, "not-sent")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        IBrowserContext window = visit.Page.Context;

        await visit.Page.CloseAsync(new() { RunBeforeUnload = false });
        line.Mend();
        // On a tablet that several people use it waits for whoever typed it.
        await using Visit colleague = new(await window.NewPageAsync(), ownsContext: false);
        await colleague.SignInByNameAsync("Ivo Penhallick");
        await colleague.OpenAsync(address);
        await Assertions.Expect(State(colleague, "sent")).ToBeVisibleAsync();
        await Assertions.Expect(colleague.Page.Locator($"[data-field='{field}']")).Not.ToHaveValueAsync("0,33");
        await using Visit again = new(await window.NewPageAsync(), ownsContext: false);
        await again.SignInByNameAsync("Tamsin Orrel");
        await again.OpenAsync(address);

        await Assertions.Expect(again.Page.Locator($"[data-field='{field}']")).ToHaveValueAsync("0,33");
        await Assertions.Expect(State(again, "sent")).ToBeVisibleAsync(new() { Timeout = 60_000 });
    }

    private static ILocator State(Visit visit, string state) => visit.Page.Locator($".entry-state [data-state='{state}']");

    /// <summary>The first number cells of the grid.</summary>
    private static async Task<ILocator[]> FirstCellsAsync(IPage page)
    {
        ILocator numbers = page.Locator("table.entry-grid input[data-field][inputmode=decimal]");
        string[] fields = await numbers.EvaluateAllAsync<string[]>("cells => cells.slice(0, 8).map(cell => cell.dataset.field)");
        return
        [
            .. fields
                .Where(field => field.Contains("Area", StringComparison.OrdinalIgnoreCase))
                .Take(3)
                .Select(field => page.Locator($"[data-field='{field}']")),
        ];
    }
}
