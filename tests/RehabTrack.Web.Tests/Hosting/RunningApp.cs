using System.Net;
using System.Net.Sockets;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Web.Account;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Tests.Hosting;

/// <summary>The whole server on a free loopback port, with an empty data folder of its own.</summary>
public sealed partial class RunningApp : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("rehabtrack-web-").FullName;
    private WebApplication? _app;
    private int _elsewhere;

    public Uri Address { get; private set; } = default!;

    public IServiceProvider Services => _app!.Services;

    public Actor Vet { get; private set; } = default!;

    public Actor Trainer { get; private set; } = default!;

    public async Task InitializeAsync()
    {
        await MigratedFolder.FillAsync(_folder);
        StartOptions options = StartOptions.Parse(["--data", _folder, "--urls", "http://127.0.0.1:0"]);
        _app = WebHost.Build(options);
        await Opening.RunAsync(_app.Services, options);
        await _app.StartAsync();
        Address = new Uri(Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single());
        Vet = await FirstVet.SetUpAsync(Services);
        Trainer = await AddAsync("Tess Lunge", Role.Trainer);
    }

    public async Task DisposeAsync()
    {
        await _app!.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
    }

    /// <summary>A browser without a cookie, which shows redirects instead of following them.</summary>
    public HttpClient Browser(CookieContainer? cookies = null) =>
        new(new SocketsHttpHandler { AllowAutoRedirect = false, CookieContainer = cookies ?? new CookieContainer() })
        {
            BaseAddress = Address,
        };

    /// <summary>A browser on another machine, so to speak: what one address may ask is counted for each of them.</summary>
    public HttpClient BrowserElsewhere()
    {
        int number = Interlocked.Increment(ref _elsewhere);
        IPAddress from = new([127, 1, (byte)(number / 250), (byte)(1 + number % 250)]);
        return new(
            new SocketsHttpHandler
            {
                AllowAutoRedirect = false,
                ConnectCallback = async (context, cancellation) =>
                {
                    Socket line = new(SocketType.Stream, ProtocolType.Tcp);
                    line.Bind(new IPEndPoint(from, 0));
                    await line.ConnectAsync(IPAddress.Loopback, context.DnsEndPoint.Port, cancellation);
                    return new NetworkStream(line, ownsSocket: true);
                },
            }
        )
        {
            BaseAddress = Address,
        };
    }

    /// <summary>A browser in which somebody is signed in: the cookie of a session of theirs, as the sign-in gives it.</summary>
    public async Task<HttpClient> BrowserAsync(Actor actor, CookieContainer? cookies = null, TimeSpan begunBefore = default)
    {
        Actor session = await Services.GetRequiredService<SessionDoor>().BeginAsync(actor, "test", isDemo: true);
        DateTimeOffset begun = TimeProvider.System.GetUtcNow() - begunBefore;
        AuthenticationTicket ticket = new(
            ActorClaims.Write(session),
            new AuthenticationProperties { IssuedUtc = begun, ExpiresUtc = begun + new SignInSettings().IdleTime },
            CookieAuthenticationDefaults.AuthenticationScheme
        );
        cookies ??= new CookieContainer();
        cookies.Add(Address, new Cookie(CookieOptions.Cookie.Name!, CookieOptions.TicketDataFormat.Protect(ticket)));
        return Browser(cookies);
    }

    /// <summary>What the cookie of a session says.</summary>
    public AuthenticationTicket TicketOf(CookieContainer cookies) =>
        CookieOptions.TicketDataFormat.Unprotect(cookies.GetCookies(Address)[CookieOptions.Cookie.Name!]!.Value)!;

    /// <summary>How the cookie of a session is made.</summary>
    public CookieAuthenticationOptions CookieOptions =>
        Services.GetRequiredService<IOptionsMonitor<CookieAuthenticationOptions>>().Get(CookieAuthenticationDefaults.AuthenticationScheme);

    /// <summary>The antiforgery token of the first form of a page.</summary>
    public static async Task<string> TokenAsync(HttpClient browser, string page)
    {
        string html = await browser.GetStringAsync(page);
        Match token = Token().Match(html);
        Assert.True(token.Success, $"{page} has no form with a token.");
        return token.Groups["value"].Value;
    }

    private async Task<Actor> AddAsync(string name, Role role)
    {
        Guid id = (
            await Services
                .GetRequiredService<SavePerson>()
                .ExecuteAsync(
                    Vet,
                    new SavePersonInput
                    {
                        CommandId = Guid.CreateVersion7(),
                        Name = name,
                        Role = role,
                        CanSignIn = true,
                    }
                )
        ).Value.Id;
        return new Actor(Vet.PracticeId, id, role, name);
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\"[^>]*value=\"(?<value>[^\"]+)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Token();
}
