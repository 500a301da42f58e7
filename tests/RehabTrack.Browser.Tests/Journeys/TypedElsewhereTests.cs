using Microsoft.Playwright;
using RehabTrack.Browser.Tests.EveryPage;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>A decision is begun at one device and gone on with at another.</summary>
[Collection(BrowserCollection.Name)]
public sealed class TypedElsewhereTests(ChromiumFixture chromium, OwnDemoFixture demo) : IClassFixture<OwnDemoFixture>
{
    // The browser holds what the server has not taken yet, from the key that was pressed until the answer came.
    private const string IsTaken = "() => !Object.keys(localStorage).some(key => key.startsWith('typed:decision:'))";

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

        await told.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Start afresh" }).ClickAsync();
        await Assertions.Expect(told).ToContainTextAsync("2 entries typed here earlier were set aside.");
        await Assertions.Expect(visit.Page.Locator("button[data-kind=Pause]")).ToHaveAttributeAsync("aria-pressed", "false");

        await told.GetByRole(AriaRole.Button).ClickAsync();
        await Assertions.Expect(reason).ToHaveValueAsync("typed with gloves");
        await visit.Page.WaitForFunctionAsync(IsTaken);
        // The server has it again, and nothing waits to be brought back twice.
        await visit.OpenAsync(address);
        await Assertions.Expect(reason).ToHaveValueAsync("typed with gloves");
        await Assertions.Expect(told).ToContainTextAsync("They are back in their places.");
        // The other test of this demo finds the form as it was.
        await told.GetByRole(AriaRole.Button).ClickAsync();
        await Assertions.Expect(told).ToContainTextAsync("were set aside");
        Assert.Empty(visit.Complaints);
    }
}
