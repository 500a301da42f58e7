using Microsoft.Playwright;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.EveryPage;

/// <summary>The way to the pages of a horse: by its name, as a person goes.</summary>
internal static class DemoPages
{
    public static async Task OpenHorseAsync(Visit visit, string name)
    {
        await visit.OpenAsync("/horses");
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = name }).First.ClickAsync();
        await visit.Page.WaitForURLAsync(address => address.Contains("/horses/", StringComparison.Ordinal));
        await visit.Page.GetByRole(AriaRole.Heading, new() { Level = 1, Name = name }).WaitForAsync();
    }

    public static async Task OpenBelowHorseAsync(Visit visit, string name, string below)
    {
        await OpenHorseAsync(visit, name);
        await visit.OpenAsync(new Uri(visit.Page.Url).AbsolutePath + below);
    }

    public static async Task OpenCaseAsync(Visit visit, string name)
    {
        await OpenHorseAsync(visit, name);
        await visit.Page.Locator("a[href*='/cases/']:not([href$='/new'])").First.ClickAsync();
        await visit.Page.WaitForURLAsync(address => new Uri(address).AbsolutePath.StartsWith("/cases/", StringComparison.Ordinal));
    }
}
