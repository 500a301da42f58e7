using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using OtpNet;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Web.Account;
using RehabTrack.Web.Components;
using RehabTrack.Web.Hosting;
using RehabTrack.Web.Tests.Hosting;

namespace RehabTrack.Web.Tests.Account;

/// <summary>A server on which nobody can sign in yet, and what a person does with its forms.</summary>
public sealed partial class NewServer : IAsyncLifetime
{
    public const string Password = "heather-anvil-morning-7";

    // Tests hash more often in a minute than a practice in a month.
    private const int HurriedRounds = 1_000;

    private readonly string _folder = Directory.CreateTempSubdirectory("rehabtrack-door-").FullName;
    private WebApplication? _app;
    private int _rounds;

    public Uri Address { get; private set; } = default!;

    public IServiceProvider Services => _app!.Services;

    private PasswordHasherOptions Hashing => Services.GetRequiredService<IOptions<PasswordHasherOptions>>().Value;

    public string Code => Services.GetRequiredService<SetUpCode>().Text;

    public async Task InitializeAsync()
    {
        await MigratedFolder.FillAsync(_folder);
        StartOptions options = StartOptions.Parse(["--data", _folder, "--urls", "http://127.0.0.1:0"]);
        _app = WebHost.Build(options);
        (_rounds, Hashing.IterationCount) = (Hashing.IterationCount, HurriedRounds);
        await Opening.RunAsync(_app.Services, options);
        await _app.StartAsync();
        Address = new Uri(Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single());
    }

    /// <summary>Hashes passwords from now on as a server does that no test hurries.</summary>
    public void DoNotHurry() => Hashing.IterationCount = _rounds;

    public async Task DisposeAsync()
    {
        await _app!.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
    }

    /// <summary>A browser that has never been here.</summary>
    public HttpClient Browser(CookieContainer? cookies = null) =>
        new(new SocketsHttpHandler { AllowAutoRedirect = false, CookieContainer = cookies ?? new CookieContainer() })
        {
            BaseAddress = Address,
        };

    /// <summary>The forms of a first run, filled in.</summary>
    public Dictionary<string, string> FirstRun(string? code = null, string password = Password) =>
        new()
        {
            ["set-up-code"] = code ?? Code,
            ["practice-name"] = "Tarn Side Equine",
            ["phone"] = "+43 1 5550 177",
            ["time-zone"] = "Europe/Vienna",
            ["interval"] = "45",
            ["person-name"] = "Ida Fell",
            ["role"] = nameof(Role.Administrator),
            ["sign-in-name"] = "ida@example.org",
            ["new-password"] = password,
            ["new-password-again"] = password,
        };

    /// <summary>Goes through the first run to the end, with a second step.</summary>
    /// <returns>The browser in which the first person is signed in, the key of the second step, and the recovery codes.</returns>
    public async Task<Insider> SetUpAsync()
    {
        HttpClient browser = Browser();
        Assert.Equal("/sign-in/second-step", (await SendAsync(browser, "/set-up", "set-up", FirstRun())).To);
        return await SecondStepAsync(browser, "/");
    }

    /// <summary>Sets the second step up where the browser was led to it.</summary>
    public static async Task<Insider> SecondStepAsync(HttpClient browser, string home)
    {
        Insider insider = await ConfirmSecondStepAsync(browser);
        Assert.Equal(home, (await SendAsync(browser, "/sign-in/second-step", "finish", [])).To);
        return insider;
    }

    /// <summary>Sets the second step up, and stays before the recovery codes.</summary>
    public static async Task<Insider> ConfirmSecondStepAsync(HttpClient browser)
    {
        string page = await browser.GetStringAsync("/sign-in/second-step");
        string key = Key().Match(page).Groups["key"].Value.Replace(" ", "", StringComparison.Ordinal);
        Answer shown = await SendAsync(browser, "/sign-in/second-step", "second-step", new() { ["code"] = CodeOf(key) });
        string[] recovery = [.. Recovery().Matches(shown.Body).Select(match => match.Groups["code"].Value)];
        Assert.Equal(10, recovery.Length);
        return new Insider(browser, key, recovery);
    }

    /// <summary>Somebody who was added and invited, and who has chosen a password.</summary>
    public async Task<(Actor Person, HttpClient Browser, Answer Answer)> JoinAsync(
        Actor by,
        string name,
        Role role,
        string signInName,
        CookieContainer? cookies = null
    )
    {
        Actor person = await AddAsync(by, name, role);
        string secret = await InviteAsync(by, person, takesSecondStep: false);
        HttpClient browser = Browser(cookies);
        Answer answer = await SendAsync(browser, $"/invited/{secret}", "invited", Choice(signInName));
        return (person, browser, answer);
    }

    public static Dictionary<string, string> Choice(string signInName, string password = Password) =>
        new()
        {
            ["sign-in-name"] = signInName,
            ["new-password"] = password,
            ["new-password-again"] = password,
        };

    public async Task<Actor> AddAsync(Actor by, string name, Role role)
    {
        Guid id = (
            await Services
                .GetRequiredService<SavePerson>()
                .ExecuteAsync(
                    by,
                    new SavePersonInput
                    {
                        CommandId = Guid.CreateVersion7(),
                        Name = name,
                        Role = role,
                        CanSignIn = true,
                    }
                )
        ).Value.Id;
        return new Actor(by.PracticeId, id, role, name);
    }

    public async Task<string> InviteAsync(Actor by, Actor person, bool takesSecondStep)
    {
        AddressSecret secret = AddressSecret.Make();
        Assert.True(
            (
                await Services
                    .GetRequiredService<InvitePerson>()
                    .ExecuteAsync(by, new InvitePersonInput(Guid.CreateVersion7(), person.PersonId, secret.Hash, takesSecondStep))
            ).Succeeded
        );
        return secret.Text;
    }

    /// <summary>The one who did the first run.</summary>
    public async Task<Actor> FirstAsync()
    {
        SignInAccount account = (await Services.GetRequiredService<AccountStore>().ByNameAsync(SignInAccount.Fold("ida@example.org")))!;
        return (await Services.GetRequiredService<AccountStore>().PersonAsync(account))!;
    }

    public static Task<Answer> SignInAsync(HttpClient browser, string name, string password) =>
        SendAsync(browser, "/sign-in", "sign-in", new() { ["sign-in-name"] = name, ["password"] = password });

    /// <summary>The figures that an app shows for a key, at a distance of so many half minutes.</summary>
    public static string CodeOf(string key, int steps = 0) =>
        new Totp(Base32Encoding.ToBytes(key)).ComputeTotp(DateTime.UtcNow.AddSeconds(30 * steps));

    /// <summary>Sends a form of a page as a browser does.</summary>
    public static async Task<Answer> SendAsync(HttpClient browser, string page, string form, Dictionary<string, string> fields)
    {
        using HttpResponseMessage shown = await browser.GetAsync(page);
        string html = await shown.Content.ReadAsStringAsync();
        Match token = Token().Match(html);
        Assert.True(token.Success, $"{page} answers {shown.StatusCode} to {shown.Headers.Location} and has no form with a token.");
        Dictionary<string, string> sent = new(fields) { ["_handler"] = form, ["__RequestVerificationToken"] = token.Groups["value"].Value };
        // Where the form itself says that it goes, which is not always where the page came from.
        string to = Action(form).Match(html) is { Success: true } action ? WebUtility.HtmlDecode(action.Groups["to"].Value) : page;
        using HttpResponseMessage answer = await browser.PostAsync(to, new FormUrlEncodedContent(sent));
        string? led = answer.Headers.Location is { } location ? new Uri(browser.BaseAddress!, location).AbsolutePath : null;
        string[] cookies = answer.Headers.TryGetValues("Set-Cookie", out IEnumerable<string>? set) ? [.. set] : [];
        return new Answer(answer.StatusCode, led, await answer.Content.ReadAsStringAsync(), cookies);
    }

    private static Regex Action(string form) =>
        new(
            $"<form[^>]*? action=\"(?<to>[^\"]*)\"[^>]*><input type=\"hidden\" name=\"_handler\" value=\"{Regex.Escape(form)}\"",
            RegexOptions.ExplicitCapture,
            TimeSpan.FromSeconds(1)
        );

    /// <summary>A page without what is new in each answer: what is sealed, and what was typed.</summary>
    public static string Masked(string html) => Sealed().Replace(Typed().Replace(html, "value=\"\""), "");

    [GeneratedRegex("name=\"__RequestVerificationToken\"[^>]*value=\"(?<value>[^\"]+)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Token();

    // What the framework seals begins with these letters: forms' tokens and the state of components.
    [GeneratedRegex("CfDJ8[A-Za-z0-9_+/=-]+", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Sealed();

    [GeneratedRegex("data-key[^>]*>(?<key>[A-Z2-7 ]+)<", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Key();

    [GeneratedRegex("data-recovery[^>]*>(?<code>[^<]+)<", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Recovery();

    [GeneratedRegex("(?<=id=\"sign-in-name\"[^>]*)value=\"[^\"]*\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Typed();

    /// <summary>What a form was answered with.</summary>
    public sealed record Answer(HttpStatusCode Status, string? To, string Body, IReadOnlyList<string> Cookies);

    /// <summary>Somebody who is in.</summary>
    public sealed record Insider(HttpClient Browser, string Key, IReadOnlyList<string> Recovery);
}
