using System.Text.RegularExpressions;
using Microsoft.Playwright;
using RehabTrack.Browser.Tests.EveryPage;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>What the trail tells of a reading, and what is left of a person who is erased.</summary>
[Collection(BrowserCollection.Name)]
public sealed class TrailTests(ChromiumFixture chromium, OwnDemoFixture demo) : IClassFixture<OwnDemoFixture>
{
    [Fact]
    public async Task From_a_bar_of_the_ladder_it_is_one_press_to_who_changed_the_reading()
    {
        await using Visit vet = await chromium.VisitAsAsync(demo.App, "Vet");
        await DemoPages.OpenCaseAsync(vet, "Quillon");
        await vet.Page.Locator(".case-ladder .rung:visible").First.ClickAsync();

        await vet.Page.GetByRole(AriaRole.Link, new() { Name = "Who changed it" }).ClickAsync();

        // Who, on the practice's clock, and in UTC.
        await Assertions
            .Expect(vet.Page.Locator(".reading-panel ol.lines > li").First)
            .ToContainTextAsync(new Regex(@"(Ivo Penhallick|Tamsin Orrel|Bryony Castor).*20\d\d.*UTC", RegexOptions.Singleline));
    }

    [Fact]
    public async Task Who_is_erased_is_gone_from_the_lists_the_trail_and_the_way_back()
    {
        await using Visit vet = await chromium.VisitAsAsync(demo.App, "Vet");
        await vet.OpenAsync("/people/new");
        await vet.Page.FillAsync("#name", "Perdita Wyke");
        await vet.Page.FillAsync("#phone", "+44 1632 960123");
        await vet.Page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        await vet.Page.GetByRole(AriaRole.Link, new() { Name = "Perdita Wyke" }).ClickAsync();
        await Assertions.Expect(vet.Page.Locator("section[aria-labelledby=personal-data]")).ToContainTextAsync("Put the person away first");
        string address = vet.Page.Url;
        await vet.Page.GetByRole(AriaRole.Button, new() { Name = "Put this person away" }).ClickAsync();
        await vet.Page.GetByRole(AriaRole.Button, new() { Name = "Put away", Exact = true }).ClickAsync();
        await vet.Page.WaitForURLAsync("**/people");

        await vet.OpenAsync(address);
        await vet.Page.GetByRole(AriaRole.Button, new() { Name = "Erase what is held" }).ClickAsync();
        await vet.Page.GetByRole(AriaRole.Button, new() { Name = "Erase for good" }).ClickAsync();

        await Assertions
            .Expect(vet.Page.Locator("section[aria-labelledby=personal-data] [role=status]"))
            .ToHaveTextAsync("Erased. The horses’ record stays, and the trail still fits.");
        foreach (string page in (string[])["/people", "/put-away?of=people", "/practice/trail"])
        {
            await vet.OpenAsync(page);
            await Assertions.Expect(vet.Page.Locator("main")).Not.ToContainTextAsync("Perdita Wyke");
            await Assertions.Expect(vet.Page.Locator("main")).Not.ToContainTextAsync("960123");
        }

        Assert.Empty(vet.Complaints);
    }
}
