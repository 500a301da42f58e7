using System.Net;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.History;
using RehabTrack.Records.People;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using static RehabTrack.Web.Tests.Account.NewServer;

namespace RehabTrack.Web.Tests.Account;

/// <summary>From a server that nobody can enter to people who can, and everybody else who cannot. Each with a server of its own.</summary>
public sealed class SignInTests : IAsyncLifetime
{
    private readonly NewServer _server = new();

    public Task InitializeAsync() => _server.InitializeAsync();

    public Task DisposeAsync() => _server.DisposeAsync();

    [Fact]
    public async Task The_first_run_makes_the_practice_and_its_first_person_and_is_over_then()
    {
        using HttpClient stranger = _server.Browser();
        Assert.Equal("/set-up", (await stranger.GetAsync("/sign-in")).Headers.Location!.AbsolutePathOr());

        Insider ida = await _server.SetUpAsync();

        Assert.Contains("Tarn Side Equine", await ida.Browser.GetStringAsync("/practice"), StringComparison.Ordinal);
        PracticeView practice = (
            await _server.Services.GetRequiredService<GetPractice>().ExecuteAsync(await _server.FirstAsync(), NoInput.Value)
        ).Value;
        Assert.Equal(("+43 1 5550 177", "Europe/Vienna", 45), (practice.Phone, practice.TimeZone, practice.RecheckIntervalDays));
        Assert.Equal("/sign-in", (await stranger.GetAsync("/set-up")).Headers.Location!.AbsolutePathOr());
    }

    [Fact]
    public async Task Without_the_code_of_the_console_nothing_is_set_up_and_what_was_typed_stays()
    {
        using HttpClient browser = _server.Browser();

        Answer refused = await SendAsync(browser, "/set-up", "set-up", _server.FirstRun(code: "AAAA-BBBB-CCCC-DDDD"));

        Assert.Null(refused.To);
        Assert.Contains("It prints a new one at each start.", refused.Body, StringComparison.Ordinal);
        Assert.Contains("Tarn Side Equine", refused.Body, StringComparison.Ordinal);
        Assert.DoesNotContain(Password, refused.Body, StringComparison.Ordinal);
        Assert.NotNull(await _server.Services.GetRequiredService<Records.Start.SetUpDoor>().FindAsync());
    }

    [Fact]
    public async Task All_that_is_missing_is_said_at_once()
    {
        using HttpClient browser = _server.Browser();

        Answer refused = await SendAsync(browser, "/set-up", "set-up", new() { ["set-up-code"] = _server.Code });

        foreach (string field in (string[])["practice-name", "phone", "person-name", "sign-in-name", "new-password"])
        {
            Assert.Contains($"id=\"{field}-error\"", refused.Body, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task What_is_wrong_is_said_in_one_round_whoever_finds_it()
    {
        using HttpClient browser = _server.Browser();
        Dictionary<string, string> typed = _server.FirstRun(code: "AAAA-BBBB-CCCC-DDDD", password: "short");
        (typed["phone"], typed["interval"], typed["person-name"]) = ("none", "soon", new string('a', 201));
        typed["time-zone"] = new string('z', 5000);

        Answer refused = await SendAsync(browser, "/set-up", "set-up", typed);

        foreach (string field in (string[])["set-up-code", "phone", "interval", "person-name", "time-zone", "new-password"])
        {
            Assert.Contains($"id=\"{field}-error\"", refused.Body, StringComparison.Ordinal);
        }

        Assert.Contains("5000 characters; up to 200", refused.Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_password_that_was_well_is_asked_for_again_when_something_else_was_wrong()
    {
        using HttpClient browser = _server.Browser();
        Dictionary<string, string> typed = _server.FirstRun();
        typed["phone"] = "";

        Answer refused = await SendAsync(browser, "/set-up", "set-up", typed);

        Assert.Contains("id=\"phone-error\"", refused.Body, StringComparison.Ordinal);
        Assert.Contains("type it here and below again", refused.Body, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("short", "at least 12 letters")]
    [InlineData("password1234", "first that would be guessed")]
    [InlineData("qwertyuiop[]", "first that would be guessed")]
    [InlineData("TarnSideEquine", "first that would be guessed")]
    public async Task A_password_that_is_short_or_guessed_first_is_refused(string password, string says)
    {
        using HttpClient browser = _server.Browser();

        Answer refused = await SendAsync(browser, "/set-up", "set-up", _server.FirstRun(password: password));

        Assert.Null(refused.To);
        Assert.Contains(says, refused.Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Name_and_password_alone_open_nothing_to_who_has_a_second_step_and_a_code_opens_once()
    {
        Insider ida = await _server.SetUpAsync();
        using HttpClient phone = _server.Browser();

        Assert.Equal("/sign-in/code", (await SignInAsync(phone, "IDA@example.org", Password)).To);
        Assert.Equal("/sign-in", (await phone.GetAsync("/practice")).Headers.Location!.AbsolutePathOr());
        Assert.Null((await SendAsync(phone, "/sign-in/code", "code", new() { ["code"] = "000000" })).To);
        string code = CodeOf(ida.Key, 1);
        Assert.Equal("/", (await SendAsync(phone, "/sign-in/code", "code", new() { ["code"] = code })).To);
        Assert.Equal(HttpStatusCode.OK, (await phone.GetAsync("/practice")).StatusCode);

        using HttpClient thief = _server.Browser();
        await SignInAsync(thief, "ida@example.org", Password);
        Assert.Null((await SendAsync(thief, "/sign-in/code", "code", new() { ["code"] = code })).To);
    }

    [Fact]
    public async Task The_cookie_stays_out_of_reach_of_scripts_and_other_sites()
    {
        await _server.SetUpAsync();
        Actor ida = await _server.FirstAsync();
        Actor tess = await _server.AddAsync(ida, "Tess Lunge", Role.Trainer);
        string secret = await _server.InviteAsync(ida, tess, takesSecondStep: false);
        using HttpClient browser = _server.Browser();
        await SendAsync(browser, $"/invited/{secret}", "invited", Choice("tess"));
        await browser.PostAsync("/sign-out", new FormUrlEncodedContent(await TokenOfAsync(browser)));

        Answer answer = await SignInAsync(browser, "tess", Password);

        string cookie = Assert.Single(answer.Cookies, header => header.StartsWith("rehabtrack=", StringComparison.Ordinal));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Without_the_demo_nobody_is_let_in_by_a_name_alone()
    {
        await _server.SetUpAsync();
        using HttpClient browser = _server.Browser();
        using HttpResponseMessage answer = await browser.PostAsync("/sign-in/as", new FormUrlEncodedContent([]));

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal("/sign-in", answer.Headers.Location!.AbsolutePathOr());
    }

    [Fact]
    public async Task A_recovery_code_opens_once()
    {
        Insider ida = await _server.SetUpAsync();
        using HttpClient first = _server.Browser();
        await SignInAsync(first, "ida@example.org", Password);
        Assert.Equal("/", (await SendAsync(first, "/sign-in/code", "code", new() { ["code"] = ida.Recovery[3].ToLowerInvariant() })).To);

        using HttpClient second = _server.Browser();
        await SignInAsync(second, "ida@example.org", Password);
        Assert.Null((await SendAsync(second, "/sign-in/code", "code", new() { ["code"] = ida.Recovery[3] })).To);
    }

    [Fact]
    public async Task An_unknown_name_a_wrong_password_and_a_locked_account_are_one_answer()
    {
        Insider ida = await _server.SetUpAsync();
        using HttpClient stranger = _server.Browser();
        string unknown = Masked((await SignInAsync(stranger, "nobody@example.org", "wrong-wrong-wrong")).Body);
        Assert.Contains("did not let you in", unknown, StringComparison.Ordinal);

        for (int attempt = 0; attempt < new SignInSettings().TriesBeforeLock; attempt++)
        {
            Answer wrong = await SignInAsync(stranger, "ida@example.org", "wrong-wrong-wrong");
            Assert.Equal(HttpStatusCode.OK, wrong.Status);
            Assert.Equal(unknown, Masked(wrong.Body));
        }

        Assert.Equal(unknown, Masked((await SignInAsync(stranger, "ida@example.org", Password)).Body));

        // Who has been here before is not locked out by strangers.
        await ida.Browser.PostAsync("/sign-out", new FormUrlEncodedContent(await TokenOfAsync(ida.Browser)));
        Assert.Equal("/sign-in/code", (await SignInAsync(ida.Browser, "ida@example.org", Password)).To);
    }

    [Fact]
    public async Task Who_knows_the_password_has_no_tries_without_end_at_the_second_step()
    {
        Insider ida = await _server.SetUpAsync();
        using HttpClient thief = _server.Browser();
        for (int attempt = 0; attempt < new SignInSettings().TriesBeforeLock; attempt++)
        {
            Assert.Equal("/sign-in/code", (await SignInAsync(thief, "ida@example.org", Password)).To);
            Assert.Null((await SendAsync(thief, "/sign-in/code", "code", new() { ["code"] = "000000" })).To);
        }

        Assert.Null((await SendAsync(thief, "/sign-in/code", "code", new() { ["code"] = CodeOf(ida.Key, 1) })).To);
        Assert.Null((await SignInAsync(thief, "ida@example.org", Password)).To);
    }

    [Fact]
    public async Task Refusals_that_come_at_once_count_each()
    {
        await _server.SetUpAsync();
        int tries = new SignInSettings().TriesBeforeLock;
        HttpClient[] strangers = [.. Enumerable.Range(0, tries).Select(_ => _server.Browser())];

        await Task.WhenAll(strangers.Select(stranger => SignInAsync(stranger, "ida@example.org", "wrong-wrong-wrong")));

        Assert.Null((await SignInAsync(strangers[0], "ida@example.org", Password)).To);
        Array.ForEach(strangers, stranger => stranger.Dispose());
    }

    [Fact]
    public async Task A_new_sign_in_ends_the_session_that_the_browser_had()
    {
        await _server.SetUpAsync();
        (Actor tess, HttpClient desk, _) = await _server.JoinAsync(await _server.FirstAsync(), "Tess Lunge", Role.Trainer, "tess");

        await SignInAsync(desk, "tess", Password);

        OwnSessions open = (await _server.Services.GetRequiredService<ListSessions>().ExecuteAsync(tess, NoInput.Value)).Value;
        Assert.Single(open.Sessions);
    }

    [Fact]
    public async Task A_way_in_that_was_copied_after_the_second_step_opens_nothing_a_second_time()
    {
        await _server.SetUpAsync();
        CookieContainer cookies = new();
        (_, HttpClient browser, _) = await _server.JoinAsync(await _server.FirstAsync(), "Mara Holt", Role.Vet, "mara", cookies);
        await ConfirmSecondStepAsync(browser);
        Cookie half = cookies.GetAllCookies().Single(cookie => cookie.Name == "rehabtrack-half");
        Assert.Equal("/", (await SendAsync(browser, "/sign-in/second-step", "finish", [])).To);

        CookieContainer copied = new();
        copied.Add(half);
        using HttpClient thief = _server.Browser(copied);
        using HttpResponseMessage answer = await thief.GetAsync("/sign-in/second-step");

        Assert.Equal("/sign-in", answer.Headers.Location!.AbsolutePathOr());
    }

    [Fact]
    public async Task Too_many_tries_of_one_address_are_put_off()
    {
        await _server.SetUpAsync();
        using HttpClient stranger = _server.Browser();
        HttpStatusCode[] answers = new HttpStatusCode[new SignInSettings().TriesPerMinute + 1];
        for (int attempt = 0; attempt < answers.Length; attempt++)
        {
            answers[attempt] = (await SignInAsync(stranger, $"nobody{attempt}", "x")).Status;
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, answers[^1]);
        Assert.Equal(HttpStatusCode.OK, answers[0]);
    }

    [Fact]
    public async Task An_invitation_opens_once_and_afterwards_answers_as_one_that_never_was()
    {
        await _server.SetUpAsync();
        Actor ida = await _server.FirstAsync();
        Actor trainer = await _server.AddAsync(ida, "Tess Lunge", Role.Trainer);
        string older = await _server.InviteAsync(ida, trainer, takesSecondStep: false);
        string secret = await _server.InviteAsync(ida, trainer, takesSecondStep: false);
        using HttpClient browser = _server.Browser();

        Assert.Equal("/yard", (await SendAsync(browser, $"/invited/{secret}", "invited", Choice("tess"))).To);
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/yard")).StatusCode);

        using HttpClient stranger = _server.Browser();
        List<string> pages = [];
        foreach (string dead in (string[])[secret, older, AddressSecretText(), "x"])
        {
            using HttpResponseMessage answer = await stranger.GetAsync($"/invited/{dead}");
            Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
            Assert.Equal("no-referrer", Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
            pages.Add(
                Masked(await answer.Content.ReadAsStringAsync()).Replace(dead.Length > 1 ? dead : "\0", "", StringComparison.Ordinal)
            );
        }

        Assert.Contains("Ask your practice for a new one.", Assert.Single(pages.Distinct()), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_form_that_is_sent_again_after_it_was_done_is_answered_with_a_page_that_says_so()
    {
        using HttpClient browser = _server.Browser();
        await SendAsync(browser, "/set-up", "set-up", _server.FirstRun());
        await ConfirmSecondStepAsync(browser);

        Answer again = await SendAsync(browser, "/sign-in/second-step", "second-step", new() { ["code"] = "123456" });

        Assert.Equal(HttpStatusCode.BadRequest, again.Status);
        Assert.Contains("it was sent twice", again.Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_is_not_let_in_is_told_that_and_not_that_nothing_was_saved()
    {
        await _server.SetUpAsync();
        using HttpClient stranger = _server.Browser();

        Answer refused = await SignInAsync(stranger, "ida@example.org", "not the password");

        Assert.Contains("You are not signed in.", refused.Body, StringComparison.Ordinal);
        Assert.DoesNotContain("Nothing was saved.", refused.Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task All_that_is_missing_at_an_invitation_is_said_at_once()
    {
        await _server.SetUpAsync();
        Actor ida = await _server.FirstAsync();
        string secret = await _server.InviteAsync(ida, await _server.AddAsync(ida, "Tess Lunge", Role.Trainer), takesSecondStep: false);
        using HttpClient browser = _server.Browser();

        Answer refused = await SendAsync(browser, $"/invited/{secret}", "invited", []);

        Assert.Contains("id=\"sign-in-name-error\"", refused.Body, StringComparison.Ordinal);
        Assert.Contains("id=\"new-password-error\"", refused.Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sign_in_name_of_somebody_else_is_refused_and_the_invitation_still_opens()
    {
        await _server.SetUpAsync();
        Actor ida = await _server.FirstAsync();
        Actor trainer = await _server.AddAsync(ida, "Tess Lunge", Role.Trainer);
        string secret = await _server.InviteAsync(ida, trainer, takesSecondStep: false);
        using HttpClient browser = _server.Browser();

        Answer refused = await SendAsync(browser, $"/invited/{secret}", "invited", Choice("Ida@Example.org"));

        Assert.Contains("is used by somebody else", refused.Body, StringComparison.Ordinal);
        Assert.Equal("/yard", (await SendAsync(browser, $"/invited/{secret}", "invited", Choice("tess"))).To);
    }

    [Fact]
    public async Task A_vet_who_was_invited_sets_a_second_step_up_before_anything_else()
    {
        await _server.SetUpAsync();
        (_, HttpClient browser, Answer answer) = await _server.JoinAsync(await _server.FirstAsync(), "Mara Holt", Role.Vet, "mara");

        Assert.Equal("/sign-in/second-step", answer.To);
        Assert.Equal("/sign-in", (await browser.GetAsync("/")).Headers.Location!.AbsolutePathOr());
        await SecondStepAsync(browser, "/");
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/horses")).StatusCode);
    }

    [Fact]
    public async Task A_changed_password_ends_every_other_session_at_once()
    {
        await _server.SetUpAsync();
        (_, HttpClient desk, _) = await _server.JoinAsync(await _server.FirstAsync(), "Tess Lunge", Role.Trainer, "tess");
        using HttpClient phone = _server.Browser();
        await SignInAsync(phone, "tess", Password);
        Assert.Equal(HttpStatusCode.OK, (await phone.GetAsync("/yard")).StatusCode);
        const string Newer = "plinth-otter-sundial-3";

        Answer wrong = await SendAsync(desk, "/account", "password", Change("not this one", Newer));
        Assert.Contains("not the password", wrong.Body, StringComparison.Ordinal);
        Assert.Equal("/account", (await SendAsync(desk, "/account", "password", Change(Password, Newer))).To);

        Assert.Equal(HttpStatusCode.OK, (await desk.GetAsync("/account")).StatusCode);
        Assert.Equal("/sign-in", (await phone.GetAsync("/yard")).Headers.Location!.AbsolutePathOr());
        Assert.Null((await SignInAsync(phone, "tess", Password)).To);
        Assert.Equal("/yard", (await SignInAsync(phone, "tess", Newer)).To);
    }

    [Fact]
    public async Task Sessions_are_listed_and_one_that_is_ended_opens_nothing_more()
    {
        await _server.SetUpAsync();
        (Actor tess, HttpClient desk, _) = await _server.JoinAsync(await _server.FirstAsync(), "Tess Lunge", Role.Trainer, "tess");
        using HttpClient phone = _server.Browser();
        phone.DefaultRequestHeaders.UserAgent.ParseAdd("Mozilla/5.0 (Android 15; Mobile; rv:140.0) Gecko/140.0 Firefox/140.0");
        await SignInAsync(phone, "tess", Password);

        Assert.Contains("Firefox, Android", await desk.GetStringAsync("/account"), StringComparison.Ordinal);
        Answer after = await SendAsync(desk, "/account", "end-others", []);

        Assert.DoesNotContain("Firefox, Android", after.Body, StringComparison.Ordinal);
        Assert.Equal("/sign-in", (await phone.GetAsync("/yard")).Headers.Location!.AbsolutePathOr());
        Assert.Equal(HttpStatusCode.OK, (await desk.GetAsync("/yard")).StatusCode);

        // The gate asks, too: a page that was open before.
        OwnSessions open = (await _server.Services.GetRequiredService<ListSessions>().ExecuteAsync(tess, NoInput.Value)).Value;
        Actor inPage = tess with { SessionId = Assert.Single(open.Sessions).Id };
        await _server.Services.GetRequiredService<SessionDoor>().EndAsync(inPage);
        Assert.Equal(
            "not-allowed",
            Assert.Single((await _server.Services.GetRequiredService<GetPractice>().ExecuteAsync(inPage, NoInput.Value)).Problems).Code
        );
    }

    [Fact]
    public async Task Somebody_who_may_sign_in_no_more_is_out_at_the_next_click()
    {
        await _server.SetUpAsync();
        Actor ida = await _server.FirstAsync();
        (Actor tess, HttpClient desk, _) = await _server.JoinAsync(ida, "Tess Lunge", Role.Trainer, "tess");
        PersonView person = (await _server.Services.GetRequiredService<GetPerson>().ExecuteAsync(ida, tess.PersonId)).Value;

        await _server
            .Services.GetRequiredService<ArchivePerson>()
            .ExecuteAsync(ida, new RecordInput(Guid.NewGuid(), person.Id, person.Version));

        Assert.Equal("/sign-in", (await desk.GetAsync("/yard")).Headers.Location!.AbsolutePathOr());
        Assert.Null((await SignInAsync(desk, "tess", Password)).To);
    }

    [Fact]
    public async Task A_new_invitation_gives_back_a_lost_password_and_a_lost_telephone()
    {
        await _server.SetUpAsync();
        Actor ida = await _server.FirstAsync();
        (Actor mara, HttpClient old, _) = await _server.JoinAsync(ida, "Mara Holt", Role.Vet, "mara");
        await SecondStepAsync(old, "/");
        string secret = await _server.InviteAsync(ida, mara, takesSecondStep: true);
        using HttpClient browser = _server.Browser();

        Assert.Equal("/sign-in/second-step", (await SendAsync(browser, $"/invited/{secret}", "invited", Choice("mara"))).To);

        Assert.Equal("/sign-in", (await old.GetAsync("/")).Headers.Location!.AbsolutePathOr());
        await SecondStepAsync(browser, "/");
    }

    [Fact]
    public async Task The_database_holds_no_password_no_key_and_no_code()
    {
        Insider ida = await _server.SetUpAsync();
        SqliteConnection.ClearAllPools();

        string[] files = Directory.GetFiles(_server.Services.GetRequiredService<Web.Hosting.AppMode>().DataFolder);
        foreach (string file in files.Where(file => file.Contains(".db", StringComparison.Ordinal)))
        {
            await using FileStream stream = new(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using MemoryStream copy = new();
            await stream.CopyToAsync(copy);
            string text = System.Text.Encoding.Latin1.GetString(copy.ToArray());
            Assert.All([Password, ida.Key, .. ida.Recovery], secret => Assert.DoesNotContain(secret, text, StringComparison.Ordinal));
        }

        Assert.Contains(files, file => file.EndsWith(".db", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_trail_tells_who_came_in_and_who_did_not()
    {
        Insider ida = await _server.SetUpAsync();
        using HttpClient stranger = _server.Browser();
        await SignInAsync(stranger, "ida@example.org", "wrong-wrong-wrong");

        TrailPage trail = (
            await _server.Services.GetRequiredService<GetTrail>().ExecuteAsync(await _server.FirstAsync(), new TrailFilter())
        ).Value;

        string[] told = [.. trail.Lines.Select(line => line.Event?.ToString() ?? "")];
        Assert.Contains(nameof(AccessEvent.SignedIn), told);
        Assert.Contains(nameof(AccessEvent.SignInRefused), told);
        Assert.Contains(nameof(AccessEvent.SecondStepChanged), told);
        Assert.Contains(nameof(AccessEvent.PasswordChanged), told);
    }

    private static Dictionary<string, string> Change(string old, string newer) =>
        new()
        {
            ["password"] = old,
            ["new-password"] = newer,
            ["new-password-again"] = newer,
        };

    private static string AddressSecretText() => Web.Components.AddressSecret.Make().Text;

    private static async Task<Dictionary<string, string>> TokenOfAsync(HttpClient browser) =>
        new() { ["__RequestVerificationToken"] = await Hosting.RunningApp.TokenAsync(browser, "/account") };
}

internal static class Locations
{
    /// <summary>The path, of an absolute address or of a relative one.</summary>
    public static string AbsolutePathOr(this Uri location) => new Uri(new Uri("http://here"), location).AbsolutePath;
}
