using System.Net;
using RehabTrack.Web.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Hosting;

/// <summary>On a server of its own, since it uses up what a person may ask.</summary>
public sealed class FileRateTests(RunningApp app) : IClassFixture<RunningApp>
{
    private static readonly ServingLimits Limits = new();

    [Fact]
    public async Task Who_takes_out_too_many_files_is_put_off_and_others_are_not()
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        HttpStatusCode last = HttpStatusCode.OK;
        string said = "";
        for (int file = 0; file <= 2 * Limits.FilesPerMinute && last == HttpStatusCode.OK; file++)
        {
            using HttpResponseMessage answer = await browser.GetAsync("/import/empty.csv");
            last = answer.StatusCode;
            said = await answer.Content.ReadAsStringAsync();
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, last);
        Assert.Contains(ShellTexts.TooMuchTitle, said, StringComparison.Ordinal);
        using HttpResponseMessage page = await browser.GetAsync("/import");
        using HttpClient other = app.Browser();
        using HttpResponseMessage health = await other.GetAsync(Health.Ready);
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), (page.StatusCode, health.StatusCode));
    }
}
