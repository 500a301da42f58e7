using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Tests.Hosting;

/// <summary>The whole server as a proxy with TLS asks it: the test stands in the network that is believed.</summary>
public sealed class BehindProxyTests : IAsyncLifetime
{
    private const string Name = "rehab.example";

    private readonly string _folder = Directory.CreateTempSubdirectory("rehabtrack-proxy-").FullName;
    private WebApplication? _app;
    private HttpClient? _proxy;

    public async Task InitializeAsync()
    {
        await MigratedFolder.FillAsync(_folder);
        StartOptions options = StartOptions.Parse([
            "--data",
            _folder,
            "--urls",
            "http://127.0.0.1:0",
            "--Proxy:Networks=127.0.0.1/32",
            $"--AllowedHosts={Name}",
        ]);
        _app = WebHost.Build(options);
        await Opening.RunAsync(_app.Services, options);
        await _app.StartAsync();
        string address = _app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        _proxy = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = new(address) };
    }

    public async Task DisposeAsync()
    {
        _proxy!.Dispose();
        await _app!.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
    }

    /// <summary>RFC 6797; a year, subdomains included: OWASP ASVS 5.0, 3.4.1 (read from memory).</summary>
    [Fact]
    public async Task Browsers_are_told_to_come_by_a_sealed_way_only_and_their_cookies_too()
    {
        using HttpResponseMessage answer = await AskAsync("https", Name);

        Assert.Equal("max-age=31536000; includeSubDomains", Assert.Single(answer.Headers.GetValues("Strict-Transport-Security")));
        Assert.All(
            answer.Headers.GetValues("Set-Cookie"),
            cookie => Assert.Matches("^__Host-(?=.*; secure)(?=.*; path=/(;|$))(?!.*; domain=)", cookie)
        );
    }

    [Theory]
    [InlineData("http", Name)]
    [InlineData("https", "localhost")]
    public async Task On_this_machine_and_where_nothing_seals_the_way_nothing_is_told(string scheme, string host)
    {
        using HttpResponseMessage answer = await AskAsync(scheme, host);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.False(answer.Headers.Contains("Strict-Transport-Security"));
    }

    [Fact]
    public async Task It_answers_to_no_other_name()
    {
        using HttpResponseMessage answer = await AskAsync("https", "elsewhere.example");

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    private async Task<HttpResponseMessage> AskAsync(string scheme, string host)
    {
        using HttpRequestMessage request = new(HttpMethod.Get, "/set-up");
        request.Headers.Host = host;
        request.Headers.Add("X-Forwarded-Proto", scheme);
        return await _proxy!.SendAsync(request);
    }
}
