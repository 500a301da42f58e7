using Microsoft.Playwright;

namespace RehabTrack.Browser.Tests.Harness;

/// <summary>One Chromium for all tests of a collection: the distribution's, never a downloaded one.</summary>
public sealed class ChromiumFixture : IAsyncLifetime
{
    private static readonly string[] Places = ["/usr/bin/chromium-headless-shell", "/usr/bin/chromium", "/usr/bin/chromium-browser"];

    private IPlaywright? _playwright;
    private readonly Dictionary<(string Address, string Role), string> _signedIn = [];
    private readonly Dictionary<(string Address, string? Role, Screen Screen), IBrowserContext> _looking = [];
    private IBrowser? _browser;

    /// <summary>A window of its own, with nobody signed in.</summary>
    public Task<Visit> VisitAsync(RunningApp app, Screen? screen = null) => OpenAsync(app.Address, screen ?? Screen.Desktop, null);

    /// <summary>A window of its own behind a line that can be cut, with nobody signed in.</summary>
    public Task<Visit> VisitAsync(CutLine line, Screen screen) => OpenAsync(line.Address, screen, null);

    /// <summary>A window of its own that runs no script, with nobody signed in.</summary>
    public Task<Visit> VisitWithoutScriptAsync(RunningApp app, Screen screen) => OpenAsync(app.Address, screen, null, withScript: false);

    /// <summary>
    /// A window for looking only: the first person of this role, or nobody, with the cache that the last such window left. A page that is
    /// opened often need not be fetched and compiled each time.
    /// </summary>
    public async Task<Visit> LookAsync(RunningApp app, string? role, Screen screen)
    {
        if (!_looking.TryGetValue((app.Address, role, screen), out IBrowserContext? context))
        {
            Visit first = role is null ? await VisitAsync(app, screen) : await VisitAsAsync(app, role, screen);
            context = first.Page.Context;
            _looking.Add((app.Address, role, screen), context);
            await first.Page.CloseAsync();
        }

        return new Visit(await context.NewPageAsync(), ownsContext: false);
    }

    /// <summary>A window in which the first person of this role is signed in; the others share nothing but that.</summary>
    public async Task<Visit> VisitAsAsync(RunningApp app, string role, Screen? screen = null)
    {
        if (!_signedIn.TryGetValue((app.Address, role), out string? state))
        {
            await using Visit door = await VisitAsync(app);
            await door.SignInAsync(role);
            state = await door.Page.Context.StorageStateAsync();
            _signedIn.Add((app.Address, role), state);
        }

        return await OpenAsync(app.Address, screen ?? Screen.Desktop, state);
    }

    private async Task<Visit> OpenAsync(string address, Screen shown, string? state, bool withScript = true)
    {
        IBrowserContext context = await _browser!.NewContextAsync(
            new BrowserNewContextOptions
            {
                BaseURL = address,
                // A server of a test that speaks TLS has a certificate that nobody vouches for.
                IgnoreHTTPSErrors = address.StartsWith("https:", StringComparison.Ordinal),
                StorageState = state,
                ViewportSize = new ViewportSize { Width = shown.Width, Height = shown.Height },
                ColorScheme = ColorScheme.Light,
                HasTouch = shown.IsPhone,
                DeviceScaleFactor = 1,
                Locale = "en-GB",
                TimezoneId = "Europe/London",
                ReducedMotion = ReducedMotion.Reduce,
                JavaScriptEnabled = withScript,
            }
        );
        context.SetDefaultTimeout(30_000);
        return new Visit(await context.NewPageAsync());
    }

    /// <inheritdoc />
    public async Task InitializeAsync()
    {
        string? program = Environment.GetEnvironmentVariable("CHROMIUM") is { Length: > 0 } given
            ? given
            : Places.FirstOrDefault(File.Exists);
        if (program is null)
        {
            throw new InvalidOperationException("There is no Chromium here. Run ./test, which installs it, or set CHROMIUM to its path.");
        }

        _playwright = await Playwright.CreateAsync();
        // Other tests run beside these, on two cores: what is waited for comes, and later than on a quiet machine.
        Assertions.SetDefaultExpectTimeout(30_000);
        _browser = await _playwright.Chromium.LaunchAsync(
            new BrowserTypeLaunchOptions
            {
                ExecutablePath = program,
                Headless = true,
                ChromiumSandbox = false,
                Args =
                [
                    "--disable-gpu",
                    "--disable-background-networking",
                    "--disable-component-update",
                    "--disable-sync",
                    "--no-first-run",
                    "--font-render-hinting=none",
                ],
            }
        );
    }

    /// <inheritdoc />
    public async Task DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.CloseAsync();
        }

        _playwright?.Dispose();
    }
}
