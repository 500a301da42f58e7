using Microsoft.Playwright;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>The published app where it can be reached by TLS only.</summary>
[Collection(BrowserCollection.Name)]
public sealed class SealedWayTests(ChromiumFixture chromium)
{
    /// <summary>OWASP ASVS 5.0, 3.3.1 and 3.3.3; what the prefix asks for: RFC 6265bis, 4.1.3.2 (both from memory).</summary>
    [Fact]
    public async Task Behind_TLS_a_browser_keeps_only_cookies_of_this_very_host_and_the_first_run_goes_through_with_them()
    {
        await using RunningApp app = await RunningApp.StartSealedAsync();
        await using Visit visit = await chromium.VisitAsync(app);

        await FirstSteps.FirstRunAsync(visit.Page, await app.SetUpCodeAsync());

        IReadOnlyList<BrowserContextCookiesResult> kept = await visit.Page.Context.CookiesAsync();
        Assert.Equal(
            ["__Host-rehabtrack", "__Host-rehabtrack-form", "__Host-rehabtrack-known"],
            kept.Select(cookie => cookie.Name).Order(StringComparer.Ordinal)
        );
        Assert.All(
            kept,
            cookie =>
            {
                Assert.True(cookie.Secure);
                Assert.True(cookie.HttpOnly);
                Assert.Equal(SameSiteAttribute.Strict, cookie.SameSite);
                Assert.Equal("/", cookie.Path);
                Assert.Equal("127.0.0.1", cookie.Domain);
            }
        );
        Assert.Empty(visit.Complaints);
    }
}
