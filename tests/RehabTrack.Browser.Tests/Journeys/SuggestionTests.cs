using Microsoft.Playwright;
using RehabTrack.Browser.Tests.EveryPage;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>A vet asks the rules about a step up, and an assistant is not shown a suggestion.</summary>
[Collection(BrowserCollection.Name)]
public sealed class SuggestionTests(ChromiumFixture chromium, DemoFixture demo)
{
    [Fact]
    public async Task What_the_visit_found_changes_the_suggestion_and_stands_in_the_address()
    {
        await using Visit visit = await chromium.VisitAsAsync(demo.App, "Vet");
        await DemoPages.OpenCaseAsync(visit, "Quillon");
        ILocator suggestion = visit.Page.Locator(".case-suggestion");
        ILocator headline = suggestion.Locator(".say");
        await Assertions.Expect(headline).ToHaveTextAsync("Hold");
        await Assertions
            .Expect(suggestion.Locator(".findings"))
            .ToContainTextAsync("Soundness, or what could hide lameness, is not recorded.");

        await visit.Page.GetByLabel("Heat, swelling, pain on palpation, or lameness after work").SelectOptionAsync("yes");

        await Assertions.Expect(headline).ToHaveTextAsync("Stop and call the vet");
        await Assertions.Expect(suggestion.Locator(".findings li").First).ToContainTextAsync("common practice, no source");
        Assert.Contains("visit=signs-yes", visit.Page.Url, StringComparison.Ordinal);

        await visit.Page.ReloadAsync();

        await Assertions.Expect(headline).ToHaveTextAsync("Stop and call the vet");
    }

    [Fact]
    public async Task A_date_that_is_none_stays_as_typed_and_says_how_to_mend_it()
    {
        await using Visit visit = await chromium.VisitAsAsync(demo.App, "Vet");
        await DemoPages.OpenCaseAsync(visit, "Quillon");
        await visit.Page.GetByLabel("Shock wave at any time").SelectOptionAsync("yes");
        ILocator date = visit.Page.GetByLabel("Date of the last shock wave");

        await date.FillAsync("14.3.");

        await Assertions.Expect(visit.Page.Locator(".case-suggestion")).ToContainTextAsync("Write it as 2026-03-14.");
        await Assertions.Expect(date).ToHaveValueAsync("14.3.");
    }

    [Fact]
    public async Task An_assistant_gets_no_suggestion()
    {
        await using Visit visit = await chromium.VisitAsync(demo.App);
        await visit.SignInByNameAsync("Bryony Castor");

        await DemoPages.OpenCaseAsync(visit, "Quillon");

        await Assertions.Expect(visit.Page.Locator(".case-suggestion")).ToHaveCountAsync(0);
    }
}
