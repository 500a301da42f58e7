using System.Net;
using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Overview;
using RehabTrack.Records.Room;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Tests.Hosting;

public sealed partial class ServerTests(RunningApp app) : IClassFixture<RunningApp>
{
    private static readonly string[] Open =
    [
        "/sign-in",
        "/sign-in/code",
        "/sign-in/second-step",
        "/set-up",
        "/invited",
        "/not-found",
        "/error",
    ];

    private static readonly string[] ForOthers = ["/yard", "/progress", "/concern", "/account"];

    public static TheoryData<string> ClosedPages => [.. Pages().Except(Open, StringComparer.Ordinal)];

    public static TheoryData<string> PracticePages =>
        [
            .. Pages()
                .Except(Open, StringComparer.Ordinal)
                .Where(page => !ForOthers.Any(other => page == other || page.StartsWith($"{other}/", StringComparison.Ordinal))),
        ];

    [Theory]
    [MemberData(nameof(ClosedPages))]
    public async Task A_page_asks_a_stranger_to_sign_in(string page)
    {
        using HttpClient browser = app.Browser();
        using HttpResponseMessage answer = await browser.GetAsync(page);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.StartsWith("/sign-in", answer.Headers.Location!.PathAndQuery, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/import/empty.csv")]
    [InlineData("/import/example.csv")]
    [InlineData("/import/0199a0a0-0000-7000-8000-000000000000/wrong.csv")]
    [InlineData("/horses/0199a0a0-0000-7000-8000-000000000000/photo")]
    public async Task A_download_asks_a_stranger_to_sign_in(string address)
    {
        using HttpClient browser = app.Browser();
        using HttpResponseMessage answer = await browser.GetAsync(address);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
    }

    [Fact]
    public async Task The_live_connection_asks_a_stranger_to_sign_in()
    {
        using HttpClient browser = app.Browser();
        using HttpResponseMessage answer = await browser.PostAsync("/_blazor/negotiate?negotiateVersion=1", null);
        Assert.NotEqual(HttpStatusCode.OK, answer.StatusCode);
    }

    [Theory]
    [MemberData(nameof(PracticePages))]
    public async Task A_trainer_opens_no_page_of_the_practice(string page)
    {
        using HttpClient browser = await app.BrowserAsync(app.Trainer);
        using HttpResponseMessage answer = await browser.GetAsync(page);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Fact]
    public async Task A_trainer_is_refused_by_the_use_case_behind_the_start_page_too()
    {
        Outcome<OverviewView> outcome = await app.Services.GetRequiredService<GetOverview>().ExecuteAsync(app.Trainer, NoInput.Value);
        Assert.Equal("not-allowed", Assert.Single(outcome.Problems).Code);
    }

    [Fact]
    public async Task A_trainer_reads_that_no_work_is_signed()
    {
        using HttpClient browser = await app.BrowserAsync(app.Trainer);
        string page = await browser.GetStringAsync("/yard");
        Assert.Contains(Wording.OutsidePages.Caution, WebUtility.HtmlDecode(page), StringComparison.Ordinal);
        Assert.DoesNotContain("/horses", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_vet_reads_the_start_page()
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        string page = await browser.GetStringAsync("/");
        Assert.Contains(Wording.StartPage.EmptySay, WebUtility.HtmlDecode(page), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/sign-in")]
    [InlineData("/no-such-page")]
    [InlineData("/app.css")]
    [InlineData("/import/example.csv")]
    public async Task Every_answer_carries_the_security_headers(string address)
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        browser.DefaultRequestHeaders.Add("Origin", "https://elsewhere.example");
        using HttpResponseMessage answer = await browser.GetAsync(address);
        Assert.False(answer.Headers.Contains("Access-Control-Allow-Origin"));
        string policy = string.Join("; ", answer.Headers.GetValues("Content-Security-Policy"));
        Assert.Contains("script-src 'self';", policy, StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
        Assert.Contains("object-src 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe-eval", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.Equal("same-origin", Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
    }

    /// <summary>OWASP ASVS 5.0, 14.3.2 (from memory).</summary>
    [Theory]
    [InlineData("/", true)]
    [InlineData("/horses", true)]
    [InlineData("/account", true)]
    [InlineData("/no-such-page", true)]
    [InlineData("/import/example.csv", true)]
    [InlineData("/app.css", false)]
    public async Task A_browser_keeps_scripts_and_styles_and_nothing_of_the_records(string address, bool holdsRecords)
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        using HttpResponseMessage answer = await browser.GetAsync(address);
        Assert.Equal(holdsRecords, answer.Headers.CacheControl!.NoStore);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/horses")]
    [InlineData("/practice/trail")]
    [InlineData("/account")]
    public async Task The_way_out_stands_on_every_page_of_somebody_who_is_in(string page)
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        Assert.Matches("<form[^>]* action=\"/?sign-out\"", await browser.GetStringAsync(page));
    }

    /// <summary>OWASP ASVS 5.0, 1.1.1 (from memory): what was encoded twice leads nowhere.</summary>
    [Theory]
    [InlineData("/%2570ractice/trail")]
    [InlineData("/import%252Fexample.csv")]
    [InlineData("/x/%252e%252e/practice/trail")]
    public async Task An_address_is_decoded_once(string address)
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        using HttpResponseMessage answer = await browser.GetAsync(address);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task No_page_carries_script_of_its_own()
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        foreach (
            string page in new[]
            {
                "/",
                "/horses",
                "/import",
                "/people",
                "/practice",
                "/about-the-verdict",
                "/about/use",
                "/practice/trail",
            }
        )
        {
            string html = await browser.GetStringAsync(page);
            Assert.DoesNotMatch(InlineScript(), html);
        }
    }

    [Theory]
    [InlineData("https://elsewhere.example")]
    [InlineData("http://127.0.0.1:1")]
    [InlineData("null")]
    public async Task A_foreign_page_opens_no_live_connection(string origin)
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        Assert.Equal(HttpStatusCode.Forbidden, await NegotiateAsync(browser, origin));
    }

    [Fact]
    public async Task A_page_of_this_server_opens_the_live_connection()
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        Assert.Equal(HttpStatusCode.OK, await NegotiateAsync(browser, app.Address.GetLeftPart(UriPartial.Authority)));
    }

    [Fact]
    public async Task Another_host_name_is_not_answered()
    {
        using HttpClient browser = app.Browser();
        using HttpRequestMessage request = new(HttpMethod.Get, "/sign-in");
        request.Headers.Host = "elsewhere.example";
        using HttpResponseMessage answer = await browser.SendAsync(request);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Theory]
    [InlineData("/import/file")]
    [InlineData("/horses/0199a0a0-0000-7000-8000-000000000000/photo")]
    [InlineData("/sign-out")]
    public async Task A_form_without_its_token_is_refused(string address)
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        using MultipartFormDataContent form = new() { { new StringContent("x"), "person" } };
        using HttpResponseMessage answer = await browser.PostAsync(address, form);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    /// <summary>A double click, a retry of the browser: the same page with the same file is one wish.</summary>
    [Fact]
    public async Task A_file_that_one_page_hands_in_twice_is_taken_in_once_and_another_file_is_another()
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        string page = await browser.GetStringAsync("/import");
        string form = CommandField().Match(page).Groups[1].Value;
        string token = await RunningApp.TokenAsync(browser, "/import");
        async Task<string> HandInAsync(string command, string content)
        {
            using MultipartFormDataContent posted = new()
            {
                { new StringContent(token), "__RequestVerificationToken" },
                { new StringContent(command), "command" },
                { new StringContent(content), "file", "past.csv" },
            };
            using HttpResponseMessage answer = await browser.PostAsync("/import/file", posted);
            return answer.Headers.Location!.OriginalString;
        }

        string[] same = await Task.WhenAll(HandInAsync(form, "case\n"), HandInAsync(form, "case\n"));
        string other = await HandInAsync(form, "case,lesion\n");
        string later = await HandInAsync(Guid.CreateVersion7().ToString(), "case\n");

        Assert.Equal(same[0], same[1]);
        Assert.All([same[0], other, later], address => Assert.Matches("^/import/[0-9a-f-]{36}$", address));
        Assert.Equal(3, new[] { same[0], other, later }.Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public async Task A_file_with_its_token_is_taken_in_and_read_on_a_page_of_its_own()
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        using MultipartFormDataContent form = new()
        {
            { new StringContent(await RunningApp.TokenAsync(browser, "/import")), "__RequestVerificationToken" },
            { new ByteArrayContent("case,examination_date\n"u8.ToArray()), "file", "past.csv" },
        };
        using HttpResponseMessage answer = await browser.PostAsync("/import/file", form);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Matches("^/import/[0-9a-f-]{36}$", answer.Headers.Location!.OriginalString);
        using HttpResponseMessage page = await browser.GetAsync(answer.Headers.Location);
        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
    }

    [Fact]
    public async Task The_example_can_be_downloaded_as_a_sheet()
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        using HttpResponseMessage answer = await browser.GetAsync("/import/example.csv");
        Assert.Equal("text/csv", answer.Content.Headers.ContentType!.MediaType);
        Assert.Contains("examination_date", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_not_there_is_answered_as_such()
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        using HttpResponseMessage page = await browser.GetAsync("/no-such-page");
        Assert.Equal(HttpStatusCode.NotFound, page.StatusCode);
        Assert.Contains(Wording.ShellTexts.NotFoundTitle, await page.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        using HttpResponseMessage horse = await browser.GetAsync($"/horses/{Guid.CreateVersion7()}");
        Assert.Equal(HttpStatusCode.NotFound, horse.StatusCode);
    }

    private static async Task<HttpStatusCode> NegotiateAsync(HttpClient browser, string origin)
    {
        using HttpRequestMessage request = new(HttpMethod.Post, "/_blazor/negotiate?negotiateVersion=1");
        request.Headers.Add("Origin", origin);
        using HttpResponseMessage answer = await browser.SendAsync(request);
        return answer.StatusCode;
    }

    /// <summary>Every address that a page of this app has, with an id of nothing where it wants one.</summary>
    private static IEnumerable<string> Pages() =>
        typeof(StartUp)
            .Assembly.GetTypes()
            .SelectMany(type => type.GetCustomAttributes<RouteAttribute>())
            .Select(route => Parameter().Replace(route.Template, "0199a0a0-0000-7000-8000-000000000000"))
            .Order(StringComparer.Ordinal);

    [GeneratedRegex("name=\"command\" value=\"([^\"]+)\"", RegexOptions.None, 1000)]
    private static partial Regex CommandField();

    [GeneratedRegex("\\{[^}]+\\}", RegexOptions.None, 1000)]
    private static partial Regex Parameter();

    [GeneratedRegex("<script(?![^>]*\\ssrc=)[^>]*>|\\son(click|load|error)=", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex InlineScript();
}
