using Microsoft.Playwright;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>A vet enters repeats, sees the figures, is shown what would move, takes the cv, and goes back to the table.</summary>
[Collection(BrowserCollection.Name)]
public sealed class OwnErrorTests(ChromiumFixture chromium, DemoFixture demo)
{
    [Fact]
    public async Task Own_repeats_become_the_setting_only_after_it_is_shown_what_would_move()
    {
        await using Visit visit = await chromium.VisitAsAsync(demo.App, "Vet");
        await visit.OpenAsync("/practice/measurement-error");
        await visit.Page.GetByText("Enter many lines at once").ClickAsync();
        ILocator lines = visit.Page.Locator("#lines");
        await lines.FillAsync("one; two");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Add the lines" }).ClickAsync();
        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Line 1:");
        await Assertions.Expect(lines).ToHaveValueAsync("one; two");

        // Pairs at 1 ± .05: a within-subject SD of .0707, 7.1 %.
        await lines.FillAsync(string.Join('\n', Enumerable.Range(1, 11).Select(horse => $"Horse {horse}; day; width; Ivo; 0.95 1.05")));
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Add the lines" }).ClickAsync();
        ILocator study = visit.Page.Locator("#study-SameHorseAndDay-Width");
        await Assertions.Expect(study).ToHaveTextAsync("Width, same horse and day");
        await Assertions.Expect(visit.Page.Locator(".study").First).ToContainTextAsync("7.1\u00a0%");
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Show what a cv of 7.1" }).ClickAsync();
        await Assertions.Expect(visit.Page.Locator("section[aria-labelledby=moves]")).ToContainTextAsync("would stay");
        ILocator width = visit.Page.Locator("section[aria-labelledby=in-force] tr", new() { HasText = "Width" });
        await Assertions.Expect(width).ToContainTextAsync("10.0\u00a0%");

        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Make it the practice’s setting" }).ClickAsync();

        await Assertions.Expect(width).ToContainTextAsync("Own repeats: 11 subjects, 11 degrees of freedom");
        await visit.OpenAsync("/practice");
        await Assertions.Expect(visit.Page.Locator("main")).ToContainTextAsync("Own repeats: 11 subjects");
        await visit.OpenAsync("/practice/measurement-error");
        await width.GetByRole(AriaRole.Link, new() { Name = "Back to the assumption" }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Go back to the assumption of the table" }).ClickAsync();
        await Assertions.Expect(width).ToContainTextAsync("10.0\u00a0%");
        Assert.Empty(visit.Complaints);
    }
}
