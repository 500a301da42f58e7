using Microsoft.Playwright;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.EveryPage;

[Collection(PagesCollection.Name)]
public sealed class EveryPageTests(ChromiumFixture chromium, DemoFixture demo)
{
    private const int PictureHeightLimit = 1700;

    public static TheoryData<string, string> PagesOnScreens
    {
        get
        {
            TheoryData<string, string> all = [];
            foreach ((PageVisit page, Screen screen) in PageList.All.SelectMany(page => Screen.All.Select(screen => (page, screen))))
            {
                all.Add(page.Name, screen.Name);
            }

            return all;
        }
    }

    [Theory]
    [MemberData(nameof(PagesOnScreens))]
    public async Task A_page_says_that_it_is_the_demo_is_accessible_fits_its_window_and_makes_the_browser_complain_of_nothing(
        string name,
        string screenName
    )
    {
        Screen screen = Screen.Named(screenName);
        PageVisit page = PageList.All.Single(page => page.Name == name);
        await using Visit visit = await chromium.LookAsync(demo.App, page.Role, screen);

        await page.OpenAsync(visit);

        await Assertions.Expect(visit.Page.Locator(".demo-line")).ToBeVisibleAsync();
        await SavePictureAsync(visit.Page, $"{name}-{screen.Name}-light");
        AssertNone(await Barriers.OnAsync(visit.Page));
        await visit.Page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = ColorScheme.Dark });
        await SavePictureAsync(visit.Page, $"{name}-{screen.Name}-dark");
        AssertNone(await Barriers.OfColourOnAsync(visit.Page));
        AssertNone(visit.Complaints);
        Assert.True(await FitsAsync(visit.Page), "The page scrolls sideways.");
    }

    [Fact]
    public async Task Planted_barriers_are_found()
    {
        await using Visit visit = await chromium.VisitAsync(demo.App);
        await visit.Page.SetContentAsync(
            "<html lang='en'><head><title>.</title></head><body><main><h1>.</h1><img src='data:,'>"
                + "<p style='color:#ccc;background:#fff'>pale</p></main></body></html>"
        );

        Assert.Contains(await Barriers.OnAsync(visit.Page), barrier => barrier.StartsWith("image-alt", StringComparison.Ordinal));
        Assert.Contains(
            await Barriers.OfColourOnAsync(visit.Page),
            barrier => barrier.StartsWith("color-contrast", StringComparison.Ordinal)
        );
    }

    private static void AssertNone(IReadOnlyCollection<string> found) => Assert.True(found.Count == 0, string.Join('\n', found));

    private static Task<bool> FitsAsync(IPage page) =>
        page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= document.documentElement.clientWidth");

    /// <summary>The gallery is this sweep with a folder to save to: see <c>./gallery</c>.</summary>
    private static async Task SavePictureAsync(IPage page, string name)
    {
        if (Environment.GetEnvironmentVariable("REHABTRACK_PICTURES") is not { Length: > 0 } folder)
        {
            return;
        }

        int height = await page.EvaluateAsync<int>("() => document.documentElement.scrollHeight");
        await page.ScreenshotAsync(
            new PageScreenshotOptions
            {
                Path = Path.Combine(folder, name + ".png"),
                FullPage = true,
                Clip = new Clip
                {
                    X = 0,
                    Y = 0,
                    Width = page.ViewportSize!.Width,
                    Height = Math.Min(height, PictureHeightLimit),
                },
                Animations = ScreenshotAnimations.Disabled,
            }
        );
    }
}
