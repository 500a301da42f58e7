using System.Net.Sockets;
using System.Text;
using Microsoft.Playwright;
using RehabTrack.Browser.Tests.EveryPage;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>The server is told to end while people are at work.</summary>
[Collection(BrowserCollection.Name)]
public sealed class StopTests(ChromiumFixture chromium, OwnDemoFixture demo) : IClassFixture<OwnDemoFixture>
{
    private static readonly TimeSpan StopsWithin = TimeSpan.FromSeconds(5);

    [Fact]
    public async Task With_a_page_open_and_a_file_half_way_it_ends_within_five_seconds_and_what_was_typed_waits_in_the_browser()
    {
        await using Visit visit = await chromium.VisitAsync(demo.App);
        await visit.SignInAsync("Vet");
        await DemoPages.OpenEntryAsync(visit, "Brimble Hob");
        ILocator cell = visit.Page.Locator("table.entry-grid input[data-field*='LigamentArea']").First;
        using TcpClient upload = await HalfAFileAsync(visit);
        await cell.FillAsync("1,41");

        Assert.Equal(0, await demo.App.StopAsync(StopsWithin));

        await Assertions.Expect(cell).ToHaveValueAsync("1,41");
        await demo.App.StartAgainAsync();
        string field = (await cell.GetAttributeAsync("data-field"))!;
        await Assertions.Expect(visit.Page.Locator($"[data-field='{field}']")).ToHaveValueAsync("1,41", new() { Timeout = 60_000 });
        await Assertions.Expect(visit.Page.Locator(".entry-state [data-state=sent]")).ToBeVisibleAsync(new() { Timeout = 60_000 });
    }

    /// <summary>A file whose second half does not come, sent by the person who is signed in; the server has answered nothing yet.</summary>
    private static async Task<TcpClient> HalfAFileAsync(Visit visit)
    {
        Uri address = new(visit.Page.Url);
        string cookies = string.Join("; ", (await visit.Page.Context.CookiesAsync()).Select(cookie => $"{cookie.Name}={cookie.Value}"));
        TcpClient client = new();
        await client.ConnectAsync(address.Host, address.Port);
        string head = $"""
            POST /import/file HTTP/1.1
            Host: {address.Authority}
            Origin: {address.GetLeftPart(UriPartial.Authority)}
            Cookie: {cookies}
            Content-Type: multipart/form-data; boundary=half
            Content-Length: 100000

            --half
            Content-Disposition: form-data; name="file"; filename="past.csv"

            case
            """;
        await client.GetStream().WriteAsync(Encoding.ASCII.GetBytes(head.ReplaceLineEndings("\r\n")));
        return client;
    }
}
