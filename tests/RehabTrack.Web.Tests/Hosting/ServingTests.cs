using System.Net;
using System.Net.Http.Json;
using System.Net.WebSockets;
using System.Text.Json;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.AspNetCore.SignalR;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Options;
using RehabTrack.Records.Sqlite;
using RehabTrack.Web.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Hosting;

/// <summary>What keeps the server standing and silent.</summary>
public sealed class ServingTests(RunningApp app) : IClassFixture<RunningApp>
{
    private static readonly ServingLimits Limits = new();

    [Theory]
    [InlineData(Health.Live, "live")]
    [InlineData(Health.Ready, "ready")]
    public async Task A_stranger_learns_that_the_server_lives_and_is_ready_and_nothing_else(string address, string word)
    {
        using HttpClient browser = app.Browser();
        Assert.Equal(word, await browser.GetStringAsync(address));
    }

    [Fact]
    public async Task A_form_that_is_refused_by_role_is_answered_403_and_not_by_the_page_that_says_so()
    {
        using HttpClient browser = await app.BrowserAsync(app.Trainer);
        using HttpResponseMessage answer = await browser.PostAsync("/practice/trail/trail.csv", new FormUrlEncodedContent([]));
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.Contains(ShellTexts.NotAllowedTitle, await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/sign-in?returnUrl=%2Fhorses")]
    [InlineData("/no-such-page?of=old")]
    public async Task The_way_past_the_head_of_a_page_stays_on_the_page(string address)
    {
        using HttpClient browser = address.StartsWith("/sign-in", StringComparison.Ordinal)
            ? app.Browser()
            : await app.BrowserAsync(app.Vet);
        using HttpResponseMessage answer = await browser.GetAsync(address);
        string page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync());
        Assert.Contains($"href=\"{address}#main\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_program_that_is_refused_gets_problem_json_with_a_number()
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        using HttpRequestMessage request = new(HttpMethod.Get, "/no-such-page");
        request.Headers.Add("Accept", "application/json");
        using HttpResponseMessage answer = await browser.SendAsync(request);
        JsonElement problem = await answer.Content.ReadFromJsonAsync<JsonElement>();
        Assert.Equal(
            (HttpStatusCode.NotFound, "application/problem+json"),
            (answer.StatusCode, answer.Content.Headers.ContentType!.MediaType)
        );
        Assert.Equal(ShellTexts.NotFoundTitle, problem.GetProperty("title").GetString());
        Assert.Matches("^[0-9a-f]{32}$|^[0-9A-Z]+:", problem.GetProperty("id").GetString());
    }

    [Fact]
    public async Task A_body_that_is_larger_than_any_form_is_not_read()
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        using ByteArrayContent large = new(new byte[Limits.RequestBytes + 1]);
        large.Headers.ContentType = new("application/x-www-form-urlencoded");
        using HttpResponseMessage answer = await browser.PostAsync("/practice/trail/trail.csv", large);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    [Fact]
    public async Task A_person_opens_no_more_windows_than_allowed_and_is_told_so()
    {
        CookieContainer cookies = new();
        using HttpClient browser = await app.BrowserAsync(app.Vet, cookies);
        List<ClientWebSocket> open = [];
        try
        {
            for (int window = 0; window < Limits.WindowsPerPerson; window++)
            {
                open.Add(await OpenAsync(cookies));
            }

            using ClientWebSocket tooMany = new();
            tooMany.Options.Cookies = cookies;
            await Assert.ThrowsAsync<WebSocketException>(() => tooMany.ConnectAsync(Hub(), CancellationToken.None));
            using HttpResponseMessage page = await browser.GetAsync("/horses");
            Assert.Equal(HttpStatusCode.TooManyRequests, page.StatusCode);
            Assert.Contains(
                ShellTexts.TooMuchText,
                WebUtility.HtmlDecode(await page.Content.ReadAsStringAsync()),
                StringComparison.Ordinal
            );
        }
        finally
        {
            open.ForEach(socket => socket.Dispose());
        }
    }

    [Theory]
    [InlineData("/_blazor")]
    [InlineData("/_blazor/")]
    [InlineData("/_BLAZOR//")]
    public async Task A_live_page_is_one_connection_and_not_many_questions(string path)
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        using HttpResponseMessage answer = await browser.GetAsync(path);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Fact]
    public void What_is_sent_and_how_long_a_stop_takes_is_limited()
    {
        Assert.Equal(Limits.MessageBytes, app.Services.GetRequiredService<IOptions<HubOptions>>().Value.MaximumReceiveMessageSize);
        Assert.Equal(
            Limits.RequestBytes,
            app.Services.GetRequiredService<IOptions<KestrelServerOptions>>().Value.Limits.MaxRequestBodySize
        );
        Assert.Equal(Limits.Shutdown, app.Services.GetRequiredService<IOptions<HostOptions>>().Value.ShutdownTimeout);
    }

    [Fact]
    public async Task The_keys_that_seal_the_cookies_lie_in_the_data_folder()
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        Assert.NotEmpty(Directory.GetFiles(Path.Combine(app.Services.GetRequiredService<DataFolder>().Path, "keys"), "key-*.xml"));
    }

    private async Task<ClientWebSocket> OpenAsync(CookieContainer cookies)
    {
        ClientWebSocket socket = new();
        socket.Options.Cookies = cookies;
        await socket.ConnectAsync(Hub(), CancellationToken.None);
        return socket;
    }

    private Uri Hub() => new UriBuilder(app.Address) { Scheme = "ws", Path = "/_blazor" }.Uri;
}
