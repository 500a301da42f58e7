using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Shares;
using RehabTrack.Web.Account;
using RehabTrack.Web.Components;
using RehabTrack.Web.Shared.Links;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Shared;

/// <summary>What can be reached behind a share link, and that nothing else can.</summary>
public sealed partial class ShareLinkTests(RunningApp app) : IClassFixture<RunningApp>
{
    private static readonly string[] Verdicts = ["healing", "no progress", "worsening", "at target", "not yet readable"];

    private readonly ShareHouse _house = new(app.Services, app.Vet);

    [Fact]
    public async Task An_owners_link_shows_the_one_horse_and_no_script_or_live_connection()
    {
        Guid owner = await _house.PersonAsync("Owner Alder", Role.Owner);
        Guid horse = await _house.HorseAsync("Shared Bay", owner, null);
        await _house.HorseAsync("Hidden Grey", owner, null);
        string path = (await _house.LinkAsync(owner, HorseRelation.Owner, horse)).Path;
        using HttpClient browser = app.Browser();
        using HttpResponseMessage answer = await browser.GetAsync(path);
        string page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync());

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains("Shared Bay", page, StringComparison.Ordinal);
        Assert.Contains($"<base href=\"{path}/\"", page, StringComparison.Ordinal);
        Assert.Contains(OutsidePages.NoWork, page, StringComparison.Ordinal);
        Assert.DoesNotContain("Hidden Grey", page, StringComparison.Ordinal);
        Assert.DoesNotContain("blazor.web", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("_blazor", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("sign-out", page, StringComparison.Ordinal);
        Assert.Equal(["no-referrer"], answer.Headers.GetValues("Referrer-Policy"));
        Assert.True(answer.Headers.CacheControl!.NoStore);
        Assert.Contains("noindex", Assert.Single(answer.Headers.GetValues("X-Robots-Tag")), StringComparison.Ordinal);
    }

    /// <summary>Who is signed in in the same browser keeps their session, and its cookie stays that of the whole server.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task The_secret_stands_in_no_cookie_whether_the_session_beside_it_lives_or_not(bool lives)
    {
        Guid owner = await _house.PersonAsync("Owner Willow", Role.Owner);
        Guid horse = await _house.HorseAsync("Cookie Bay", owner, null);
        string path = (await _house.LinkAsync(owner, HorseRelation.Owner, horse)).Path;
        CookieContainer cookies = new();
        // So late in its time that the server renews it.
        using HttpClient browser = await app.BrowserAsync(app.Vet, cookies, begunBefore: new SignInSettings().IdleTime * 0.9);
        if (!lives)
        {
            Actor session = ActorClaims.Read(app.TicketOf(cookies).Principal)!;
            await app.Services.GetRequiredService<SessionDoor>().EndAsync(session);
        }

        using HttpResponseMessage answer = await browser.GetAsync(path);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        string[] set = [.. answer.Headers.GetValues("Set-Cookie")];
        Assert.Contains(
            set,
            cookie =>
                cookie.StartsWith("rehabtrack=", StringComparison.Ordinal)
                && cookie.StartsWith("rehabtrack=;", StringComparison.Ordinal) != lives
        );
        Assert.All(set, cookie => Assert.Matches("; path=/(;|$)", cookie));
        Assert.DoesNotContain(set, cookie => cookie.Contains(path[3..], StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("/{0}", true)]
    [InlineData("//{0}", true)]
    [InlineData("/{0}/", true)]
    [InlineData("/S{1}", true)]
    [InlineData("/s%2F{2}", true)]
    [InlineData("/s//{2}", false)]
    [InlineData("/{0}.", false)]
    [InlineData("/{0}%20", false)]
    [InlineData("/{0};x", false)]
    [InlineData("/{0}%2e%2e", false)]
    [InlineData("/{0}/../horses", false)]
    [InlineData("/{0}/%2e%2e/horses", false)]
    [InlineData("/{0}/..%2fhorses", false)]
    [InlineData("/{0}/progress/../horses", false)]
    [InlineData("/{0}/PROGRESS", true)]
    [InlineData("/{0}/{0}", false)]
    [InlineData("/{0}/_blazor/negotiate", false)]
    [InlineData("/{0}/app.css", false)]
    [InlineData("/{0}/health/ready", false)]
    [InlineData("/x/{0}", false)]
    public async Task However_the_address_is_written_it_opens_the_page_of_the_link_or_nothing_and_is_told_to_nobody(
        string written,
        bool opens
    )
    {
        Guid owner = await _house.PersonAsync("Owner Hazel", Role.Owner);
        Guid horse = await _house.HorseAsync("Path Bay", owner, null);
        string path = (await _house.LinkAsync(owner, HorseRelation.Owner, horse)).Path;
        string secret = path[(ShareAddress.Prefix.Length + 1)..];
        string target = string.Format(System.Globalization.CultureInfo.InvariantCulture, written, path[1..], path[2..], secret);

        string answer = await RawAsync($"GET {target} HTTP/1.1\r\nHost: {app.Address.Authority}\r\nConnection: close\r\n\r\n");

        string head = answer[..answer.IndexOf("\r\n\r\n", StringComparison.Ordinal)];
        Assert.Equal(
            opens,
            head.StartsWith("HTTP/1.1 200", StringComparison.Ordinal) && answer.Contains("Path Bay", StringComparison.Ordinal)
        );
        Assert.True(opens || !answer.Contains("Path Bay", StringComparison.Ordinal));
        Assert.DoesNotContain(secret, head, StringComparison.Ordinal);
    }

    private async Task<string> RawAsync(string request)
    {
        using TcpClient line = new();
        await line.ConnectAsync(IPAddress.Loopback, app.Address.Port);
        await line.GetStream().WriteAsync(Encoding.Latin1.GetBytes(request));
        using StreamReader reader = new(line.GetStream(), Encoding.Latin1);
        return await reader.ReadToEndAsync();
    }

    [Fact]
    public async Task No_page_behind_a_link_tells_of_other_horses_other_people_verdicts_or_other_pages()
    {
        Guid owner = await _house.PersonAsync("Owner Birch", Role.Owner);
        Guid trainer = await _house.PersonAsync("Trainer Cedar", Role.Trainer);
        Guid horse = await _house.HorseAsync("Walked Roan", owner, trainer);
        Guid other = await _house.HorseAsync("Unseen Dun", await _house.PersonAsync("Owner Elm", Role.Owner), null);
        string mine = (await _house.LinkAsync(owner, HorseRelation.Owner, horse)).Path;
        string yard = (await _house.LinkAsync(trainer, HorseRelation.Trainer, null)).Path;
        using HttpClient browser = app.Browser();
        string[] pages =
        [
            mine,
            $"{mine}/progress",
            $"{mine}/concern/{horse}",
            yard,
            $"{yard}/yard/{horse}/log",
            $"{yard}/yard/{horse}/away",
            $"{yard}/yard/{horse}/less",
            $"{yard}/concern/{horse}",
        ];
        foreach (string page in pages)
        {
            string html = WebUtility.HtmlDecode(await browser.GetStringAsync(page));

            Assert.Contains("Walked Roan", html, StringComparison.Ordinal);
            foreach (string hidden in (string[])["Unseen Dun", "Owner Elm", other.ToString(), "suspensory", .. Verdicts])
            {
                Assert.False(html.Contains(hidden, StringComparison.OrdinalIgnoreCase), $"{page} tells \"{hidden}\".");
            }

            foreach (Match link in Link().Matches(html))
            {
                string target = link.Groups["to"].Value;
                Assert.True(IsHarmless(target, page), $"{page} leads out of the link to {target}.");
            }
        }
    }

    [Fact]
    public async Task Whatever_is_not_behind_a_living_link_gets_one_answer_to_the_byte()
    {
        Guid owner = await _house.PersonAsync("Owner Fir", Role.Owner);
        Guid horse = await _house.HorseAsync("Single Chestnut", owner, null);
        Guid other = await _house.HorseAsync("Other Cob", owner, null);
        (string path, _) = await _house.LinkAsync(owner, HorseRelation.Owner, horse);
        (string revoked, Saved link) = await _house.LinkAsync(owner, HorseRelation.Owner, other);
        await _house.RevokeAsync(link);
        using HttpClient browser = app.Browser();
        (string Content, string Headers) unknown = await AnswerAsync(browser, ShareAddress.PathOf(AddressSecret.Make().Text));
        Assert.Contains(OutsidePages.NoWork, WebUtility.HtmlDecode(unknown.Content), StringComparison.Ordinal);
        Assert.Contains(OutsidePages.NoOlderSheet, WebUtility.HtmlDecode(unknown.Content), StringComparison.Ordinal);

        foreach (
            string address in (string[])
                [
                    revoked,
                    $"{revoked}/progress",
                    "/s",
                    "/s/",
                    "/s/short",
                    $"/S/{AddressSecret.Make().Text}/yard",
                    $"{path}/yard",
                    $"{path}/yard/{horse}/log",
                    $"{path}/concern/{other}",
                    $"{path}/concern/{Guid.NewGuid()}",
                    $"{path}/horses/{other}/photo",
                    $"{path}/horses/{horse}",
                    $"{path}/people",
                    $"{path}/people/{owner}",
                    $"{path}/sign-in",
                    $"{path}/error",
                    $"{path}/not-found",
                    $"{path}/app.css",
                    $"{path}/_blazor/negotiate",
                    $"{path}/no-such-page",
                ]
        )
        {
            Assert.Equal((address, unknown), (address, await AnswerAsync(browser, address)));
        }
    }

    [Fact]
    public async Task The_link_counts_and_not_who_is_signed_in_beside_it()
    {
        Guid owner = await _house.PersonAsync("Owner Gorse", Role.Owner);
        Guid horse = await _house.HorseAsync("Counted Cream", owner, null);
        Guid other = await _house.HorseAsync("Vets Own View", owner, null);
        string path = (await _house.LinkAsync(owner, HorseRelation.Owner, horse)).Path;
        using HttpClient browser = await app.BrowserAsync(app.Vet);

        string page = WebUtility.HtmlDecode(await browser.GetStringAsync(path));
        Assert.Contains("Counted Cream", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Vets Own View", page, StringComparison.Ordinal);
        foreach (string below in (string[])["/", "/horses", $"/concern/{other}", $"/horses/{other}/photo"])
        {
            using HttpResponseMessage answer = await browser.GetAsync(path + below);
            Assert.Equal((below, below == "/" ? HttpStatusCode.OK : HttpStatusCode.NotFound), (below, answer.StatusCode));
        }

        using HttpResponseMessage own = await browser.GetAsync("/horses");
        Assert.Equal(HttpStatusCode.OK, own.StatusCode);
    }

    [Fact]
    public async Task A_trainer_logs_and_an_owner_reports_with_plain_forms_and_stay_under_the_link()
    {
        Guid owner = await _house.PersonAsync("Owner Hazel", Role.Owner);
        Guid trainer = await _house.PersonAsync("Trainer Ivy", Role.Trainer);
        Guid horse = await _house.HorseAsync("Logged Dun", owner, trainer);
        string yard = (await _house.LinkAsync(trainer, HorseRelation.Trainer, null)).Path;
        string mine = (await _house.LinkAsync(owner, HorseRelation.Owner, horse)).Path;
        using HttpClient browser = app.Browser();

        using HttpResponseMessage none = await PostAsync(browser, yard, $"{yard}/yard/{horse}/checked-none", "checked-none");
        using HttpResponseMessage log = await PostAsync(browser, $"{yard}/yard/{horse}/log", null, "name=\"date\"", ("walk", "15"));
        using HttpResponseMessage concern = await PostAsync(
            browser,
            $"{mine}/concern/{horse}",
            null,
            "name=\"words\"",
            ("words", "warm, left hind")
        );

        Assert.StartsWith($"{yard}/yard?said=checked", Local(none), StringComparison.Ordinal);
        Assert.StartsWith($"{yard}/yard?said=logged", Local(log), StringComparison.Ordinal);
        Assert.StartsWith($"{mine}/progress", Local(concern), StringComparison.Ordinal);
        ExerciseView kept = await _house.AskAsync<GetExercise, Guid, ExerciseView>(horse);
        Assert.Equal("warm, left hind", Assert.Single(kept.Concerns).Line.Words!.Words);
        Assert.Equal(["Trainer Ivy", "Trainer Ivy", "Owner Hazel"], kept.Lines.OrderBy(line => line.Number).Select(line => line.EnteredBy));
    }

    [Fact]
    public async Task A_concern_and_a_sign_too_many_are_answered_with_stop_and_call_and_the_words_stand_in_the_form()
    {
        Guid owner = await _house.PersonAsync("Owner Spindle", Role.Owner);
        Guid trainer = await _house.PersonAsync("Trainer Sloe", Role.Trainer);
        Guid horse = await _house.HorseAsync("Flooded Grey", owner, trainer);
        string mine = (await _house.LinkAsync(owner, HorseRelation.Owner, horse)).Path;
        string yard = (await _house.LinkAsync(trainer, HorseRelation.Trainer, null)).Path;
        using HttpClient browser = app.Browser();
        for (int number = 0; number < new ShareSettings().ConcernsPerHour; number++)
        {
            foreach (string path in (string[])[mine, yard])
            {
                using HttpResponseMessage taken = await PostAsync(browser, $"{path}/concern/{horse}", null, "name=\"words\"");
                Assert.Equal(HttpStatusCode.Redirect, taken.StatusCode);
            }
        }

        using HttpResponseMessage concern = await PostAsync(
            browser,
            $"{mine}/concern/{horse}",
            null,
            "name=\"words\"",
            ("words", "still warm")
        );
        using HttpResponseMessage sign = await PostAsync(
            browser,
            $"{yard}/yard/{horse}/log",
            null,
            "name=\"date\"",
            ("heat", nameof(SignGrade.Clear))
        );

        foreach (HttpResponseMessage refused in new[] { concern, sign })
        {
            string page = WebUtility.HtmlDecode(await refused.Content.ReadAsStringAsync());
            Assert.Contains(ProblemSentences.Of(new Problem("", "too-many-concerns")), page, StringComparison.Ordinal);
            Assert.Contains(OutsidePages.ConcernStop, page, StringComparison.Ordinal);
        }

        Assert.Contains("still warm", await concern.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(2 * new ShareSettings().ConcernsPerHour, (await _house.AskAsync<GetExercise, Guid, ExerciseView>(horse)).Lines.Count);
    }

    [Fact]
    public async Task A_link_that_is_taken_back_while_its_page_is_open_takes_no_form()
    {
        Guid trainer = await _house.PersonAsync("Trainer Juniper", Role.Trainer);
        Guid horse = await _house.HorseAsync("Revoked Piebald", null, trainer);
        (string yard, Saved link) = await _house.LinkAsync(trainer, HorseRelation.Trainer, null);
        using HttpClient browser = app.Browser();
        string page = await browser.GetStringAsync(yard);
        await _house.RevokeAsync(link);

        using HttpResponseMessage refused = await SendAsync(browser, page, $"{yard}/yard/{horse}/checked-none", "checked-none");

        Assert.Equal(HttpStatusCode.NotFound, refused.StatusCode);
        Assert.Empty((await _house.AskAsync<GetExercise, Guid, ExerciseView>(horse)).Lines);
    }

    // Below the link, or a file that is everybody's.
    private static bool IsHarmless(string target, string page) =>
        !target.StartsWith('/')
        || page.StartsWith(target.TrimEnd('/'), StringComparison.Ordinal)
        || target.EndsWith(".css", StringComparison.Ordinal)
        || target.EndsWith(".js", StringComparison.Ordinal)
        || target.EndsWith(".svg", StringComparison.Ordinal);

    /// <summary>The answer, and its headers but for the moment.</summary>
    private static async Task<(string Content, string Headers)> AnswerAsync(HttpClient browser, string address)
    {
        using HttpResponseMessage answer = await browser.GetAsync(address);
        Assert.Equal((address, HttpStatusCode.NotFound), (address, answer.StatusCode));
        return (
            await answer.Content.ReadAsStringAsync(),
            string.Join(
                "\n",
                answer
                    .Headers.Concat(answer.Content.Headers)
                    .Where(header => header.Key != "Date")
                    .OrderBy(header => header.Key, StringComparer.Ordinal)
                    .Select(header => $"{header.Key}: {string.Join(", ", header.Value)}")
            )
        );
    }

    private static async Task<HttpResponseMessage> PostAsync(
        HttpClient browser,
        string page,
        string? action,
        string mark,
        params (string Name, string Value)[] fields
    ) => await SendAsync(browser, await browser.GetStringAsync(page), action ?? page, mark, fields);

    /// <summary>Sends the form of a page that carries the mark, with the fields it has and others on top.</summary>
    private static async Task<HttpResponseMessage> SendAsync(
        HttpClient browser,
        string html,
        string action,
        string mark,
        params (string Name, string Value)[] fields
    )
    {
        string form = Form().Matches(html).Select(match => match.Value).First(found => found.Contains(mark, StringComparison.Ordinal));
        string date = Date().Match(form).Groups["value"].Value;
        List<KeyValuePair<string, string>> posted =
        [
            .. Hidden()
                .Matches(form)
                .Select(match => KeyValuePair.Create(match.Groups["name"].Value, WebUtility.HtmlDecode(match.Groups["value"].Value))),
            .. fields.Select(field => KeyValuePair.Create(field.Name, field.Value)),
        ];
        if (date.Length > 0 && posted.TrueForAll(field => field.Key != "date"))
        {
            posted.Add(KeyValuePair.Create("date", date));
        }

        return await browser.PostAsync(action, new FormUrlEncodedContent(posted));
    }

    private static string Local(HttpResponseMessage answer)
    {
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Uri to = answer.Headers.Location!;
        return to.IsAbsoluteUri ? to.PathAndQuery : to.OriginalString;
    }

    [GeneratedRegex("(href|src|action)=\"(?<to>[^\"]*)\"", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Link();

    [GeneratedRegex("<form.*?</form>", RegexOptions.Singleline | RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Form();

    [GeneratedRegex("<input type=\"hidden\" name=\"(?<name>[^\"]+)\" value=\"(?<value>[^\"]*)\"", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Hidden();

    [GeneratedRegex("<input[^>]*name=\"date\"[^>]*value=\"(?<value>[^\"]*)\"", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Date();
}
