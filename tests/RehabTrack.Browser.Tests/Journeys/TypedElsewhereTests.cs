using Microsoft.Playwright;
using RehabTrack.Browser.Tests.EveryPage;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>A decision is begun at one device and gone on with at another.</summary>
[Collection(BrowserCollection.Name)]
public sealed class TypedElsewhereTests(ChromiumFixture chromium, OwnDemoFixture demo) : IClassFixture<OwnDemoFixture>
{
    // The browser holds what the server has not taken yet, from the key that was pressed until the answer came; what was set aside stays there.
    private const string IsTaken =
        "() => !Object.keys(localStorage).some(key => key.startsWith('typed:decision:') && !key.endsWith(':aside'))";

    [Fact]
    public async Task A_decision_half_written_on_one_device_is_found_on_another_of_the_same_person_with_its_words()
    {
        await using Visit desk = await chromium.VisitAsync(demo.App);
        await desk.SignInByNameAsync("Tamsin Orrel");
        await DemoPages.OpenBelowHorseAsync(desk, "Tansy Fathom", "/decision");
        string address = new Uri(desk.Page.Url).AbsolutePath;
        await desk.Page.Locator("button[data-kind=Pause]").ClickAsync();
        await desk.Page.Locator("#swelling").SelectOptionAsync(new SelectOptionValue { Label = "slight" });
        await desk.Page.Locator("#decision-valid").FillAsync("2031-05-04");
        await desk.Page.Locator("#decision-reason").FillAsync("swollen after the hack, so we rest her until ");
        Assert.False(await desk.Page.EvaluateAsync<bool>(IsTaken));
        await desk.Page.WaitForFunctionAsync(IsTaken);

        await using Visit phone = await chromium.VisitAsync(demo.App, Screen.Phone);
        await phone.SignInByNameAsync("Tamsin Orrel");
        await phone.OpenAsync(address);

        await Assertions.Expect(phone.Page.Locator("#decision-reason")).ToHaveValueAsync("swollen after the hack, so we rest her until ");
        await Assertions.Expect(phone.Page.Locator("button[data-kind=Pause]")).ToHaveAttributeAsync("aria-pressed", "true");
        await Assertions.Expect(phone.Page.Locator("#decision-valid")).ToHaveValueAsync("2031-05-04");
        await Assertions.Expect(phone.Page.Locator("#swelling option:checked")).ToHaveTextAsync("slight");
        await Assertions
            .Expect(phone.Page.Locator(".typed-keeper > .notice[role=status]"))
            .ToContainTextAsync("They are back in their places.");

        await phone.Page.Locator("#decision-reason").FillAsync("swollen after the hack, so we rest her until Monday");
        await phone.Page.WaitForFunctionAsync(IsTaken);
        await desk.OpenAsync(address);
        await Assertions
            .Expect(desk.Page.Locator("#decision-reason"))
            .ToHaveValueAsync("swollen after the hack, so we rest her until Monday");

        // A colleague reads it in the words of the form, and has nothing of it in their own.
        await using Visit colleague = await chromium.VisitAsync(demo.App);
        await colleague.SignInByNameAsync("Ivo Penhallick");
        await colleague.OpenAsync(address);
        ILocator beside = colleague.Page.Locator(".typed-by-other");
        foreach (string told in (string[])["slight", "Pause", "4 May 2031", "so we rest her until Monday"])
        {
            await Assertions.Expect(beside).ToContainTextAsync(told);
        }

        await Assertions.Expect(colleague.Page.Locator("button[data-kind=Pause]")).ToHaveAttributeAsync("aria-pressed", "false");
        Assert.Empty(desk.Complaints);
        Assert.Empty(phone.Complaints);
        Assert.Empty(colleague.Complaints);
    }

    [Fact]
    public async Task Who_begins_a_decision_afresh_can_bring_back_what_was_typed()
    {
        await using Visit visit = await chromium.VisitAsync(demo.App, Screen.Phone);
        await visit.SignInByNameAsync("Ivo Penhallick");
        await DemoPages.OpenBelowHorseAsync(visit, "Tansy Fathom", "/decision");
        string address = new Uri(visit.Page.Url).AbsolutePath;
        ILocator reason = visit.Page.Locator("#decision-reason");
        ILocator told = visit.Page.Locator(".typed-keeper > .notice[role=status]");
        await visit.Page.Locator("button[data-kind=Pause]").ClickAsync();
        await reason.FillAsync("typed with gloves");
        await visit.Page.WaitForFunctionAsync(IsTaken);
        await visit.OpenAsync(address);
        await Assertions.Expect(reason).ToHaveValueAsync("typed with gloves");

        ILocator startAfresh = told.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Start afresh" });
        await startAfresh.ClickAsync();
        await Assertions.Expect(told).ToContainTextAsync("2 entries typed here earlier were set aside.");
        await Assertions.Expect(visit.Page.Locator("button[data-kind=Pause]")).ToHaveAttributeAsync("aria-pressed", "false");

        // What is typed meanwhile changes places with it.
        await visit.Page.Locator("button[data-kind=Pause]").ClickAsync();
        await reason.FillAsync("typed anew");
        await visit.Page.WaitForFunctionAsync(IsTaken);
        ILocator bringBack = told.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Bring back" });
        await bringBack.ClickAsync();
        await Assertions.Expect(reason).ToHaveValueAsync("typed with gloves");
        await visit.Page.WaitForFunctionAsync(IsTaken);
        await visit.OpenAsync(address);
        await Assertions.Expect(reason).ToHaveValueAsync("typed with gloves");
        await bringBack.ClickAsync();
        await Assertions.Expect(reason).ToHaveValueAsync("typed anew");
        await visit.Page.WaitForFunctionAsync(IsTaken);

        // The other test of this demo finds the form as it was.
        await startAfresh.ClickAsync();
        await Assertions.Expect(visit.Page.Locator("button[data-kind=Pause]")).ToHaveAttributeAsync("aria-pressed", "false");
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task Words_for_a_reader_that_were_not_released_are_back_when_the_page_had_to_be_closed()
    {
        await using Visit visit = await chromium.VisitAsync(demo.App, Screen.Phone);
        await visit.SignInByNameAsync("Tamsin Orrel");
        await DemoPages.OpenReportsAsync(visit);
        string address = new Uri(visit.Page.Url).AbsolutePath;
        ILocator words = visit.Page.Locator("#words");
        await words.FillAsync("Thank you for sending her, 12,5 cm");

        await visit.OpenAsync(address);
        await Assertions.Expect(words).ToHaveValueAsync("Thank you for sending her, 12,5 cm");
        await visit.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { NameRegex = new("^Release for ") }).DblClickAsync();
        await Assertions.Expect(visit.Page.Locator("section[aria-labelledby=released] li")).ToHaveCountAsync(2);

        await visit.OpenAsync(address);
        await Assertions.Expect(words).ToHaveValueAsync("");
        await Assertions.Expect(visit.Page.Locator("section[aria-labelledby=released] li")).ToHaveCountAsync(2);
        Assert.Empty(visit.Complaints);
    }
}
