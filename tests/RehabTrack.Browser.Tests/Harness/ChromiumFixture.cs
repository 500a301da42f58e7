using Microsoft.Playwright;

namespace RehabTrack.Browser.Tests.Harness;

/// <summary>One Chromium for all browser tests: the distribution's, never a downloaded one.</summary>
public sealed class ChromiumFixture : IAsyncLifetime
{
    private static readonly string[] Places = ["/usr/bin/chromium", "/usr/bin/chromium-browser"];

    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>A window of its own: no cookies, no storage of another test.</summary>
    public async Task<Visit> VisitAsync(RunningApp app, Screen? screen = null)
    {
        Screen shown = screen ?? Screen.Desktop;
        IBrowserContext context = await _browser!.NewContextAsync(
            new BrowserNewContextOptions
            {
                BaseURL = app.Address,
                ViewportSize = new ViewportSize { Width = shown.Width, Height = shown.Height },
                ColorScheme = shown.IsDark ? ColorScheme.Dark : ColorScheme.Light,
                HasTouch = shown.IsPhone,
                DeviceScaleFactor = 1,
                Locale = "en-GB",
                TimezoneId = "Europe/London",
                ReducedMotion = ReducedMotion.Reduce,
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
