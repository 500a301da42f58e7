using System.Net;
using RehabTrack.Naughty;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Reports.Paper;
using RehabTrack.Web.Hosting;
using RehabTrack.Web.Shared.Referrals;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;
using UglyToad.PdfPig;

namespace RehabTrack.Web.Tests.Shared;

/// <summary>The PDF file of a report: behind its link, and in the practice. On a server of its own, since it uses up what may be asked.</summary>
public sealed class ReportFileTests(RunningApp app) : IClassFixture<RunningApp>
{
    private readonly ShareHouse _house = new(app.Services, app.Vet);

    [Fact]
    public async Task Behind_its_link_it_is_offered_and_given_and_any_other_report_is_a_dead_link()
    {
        (Guid injury, Guid reader) = await CaseAsync("Wild Thyme", "Anwen Quill");
        Guid released = (await _house.ReleaseAsync(injury, reader, "Seen with thanks.")).Id;
        Guid other = (await _house.ReleaseAsync(injury, reader, "Another one.")).Id;
        string link = (await _house.ReportLinkAsync(reader, released)).Path;
        using HttpClient browser = app.BrowserElsewhere();

        Assert.Contains($"href=\"{ReportFiles.PathOf(released)}\"", await browser.GetStringAsync(link), StringComparison.Ordinal);
        using HttpResponseMessage answer = await browser.GetAsync($"{link}/{ReportFiles.PathOf(released)}");
        Assert.Equal((HttpStatusCode.OK, PaperFile.MediaType), (answer.StatusCode, answer.Content.Headers.ContentType!.MediaType));
        Assert.Equal("report.pdf", answer.Content.Headers.ContentDisposition!.FileName);
        Assert.Equal(["no-referrer"], answer.Headers.GetValues("Referrer-Policy"));
        Assert.True(answer.Headers.CacheControl!.NoStore);
        Assert.Contains("noindex", Assert.Single(answer.Headers.GetValues("X-Robots-Tag")), StringComparison.Ordinal);
        using PdfDocument file = PdfDocument.Open(await answer.Content.ReadAsByteArrayAsync());
        Assert.Contains("Seen with thanks.", file.GetPage(1).Text, StringComparison.Ordinal);
        using HttpResponseMessage refused = await browser.GetAsync($"{link}/{ReportFiles.PathOf(other)}");
        Assert.Equal(HttpStatusCode.NotFound, refused.StatusCode);
        Assert.Contains(OutsidePages.NoWork, WebUtility.HtmlDecode(await refused.Content.ReadAsStringAsync()), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_takes_too_many_behind_a_link_is_put_off_and_the_page_still_opens()
    {
        (Guid injury, Guid reader) = await CaseAsync("Larkspur", "Bryn Quill");
        Guid released = (await _house.ReleaseAsync(injury, reader, "Often.")).Id;
        string link = (await _house.ReportLinkAsync(reader, released)).Path;
        using HttpClient browser = app.BrowserElsewhere();
        HttpStatusCode last = HttpStatusCode.OK;
        string said = "";
        int limit = new ServingLimits().FilesPerMinute;
        for (int file = 0; file <= 2 * limit && last == HttpStatusCode.OK; file++)
        {
            using HttpResponseMessage answer = await browser.GetAsync($"{link}/{ReportFiles.PathOf(released)}");
            last = answer.StatusCode;
            said = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync());
            Assert.True(last == HttpStatusCode.OK || answer.Headers.RetryAfter is not null);
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, last);
        Assert.Contains(OutsidePages.LinkBusy, said, StringComparison.Ordinal);
        using HttpResponseMessage page = await browser.GetAsync(link);
        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
    }

    /// <summary>As the name of the horse, of its people and its yard, as a note, and as the words of the report.</summary>
    [Fact]
    public async Task Text_that_has_broken_programs_is_written_and_read_again()
    {
        int written = 0;
        foreach (string pack in NaughtyStrings.Packs.Where(pack => pack.Length <= 200))
        {
            string words = string.Concat(pack.Where(letter => !char.IsControl(letter)));
            (Guid injury, Guid reader) = await CaseAsync(words, words);
            Saved released = await _house.ReleaseAsync(injury, reader, words);
            // Each asks for its own file, so that none is put off.
            using HttpClient browser = app.BrowserElsewhere();
            string link = (await _house.ReportLinkAsync(reader, released.Id)).Path;

            using HttpResponseMessage answer = await browser.GetAsync($"{link}/{ReportFiles.PathOf(released.Id)}");

            Assert.Equal((pack, HttpStatusCode.OK), (pack, answer.StatusCode));
            using PdfDocument file = PdfDocument.Open(await answer.Content.ReadAsByteArrayAsync());
            string plain = string.Concat(words.Where(char.IsAsciiLetterOrDigit));
            string read = string.Concat(file.GetPages().SelectMany(page => page.Text).Where(char.IsAsciiLetterOrDigit));
            // At the head, in the line for the reader, as a fact, and as the words.
            Assert.InRange(plain.Length == 0 ? 4 : read.Split(plain).Length - 1, 4, int.MaxValue);
            written++;
        }

        Assert.InRange(written, 50, int.MaxValue);
    }

    private async Task<(Guid Case, Guid Reader)> CaseAsync(string horse, string reader)
    {
        Guid person = await _house.PersonAsync(reader, Role.ReferringVet);
        return (await _house.SignedCaseAsync(await _house.HorseAsync(horse, null, null, person)), person);
    }
}
