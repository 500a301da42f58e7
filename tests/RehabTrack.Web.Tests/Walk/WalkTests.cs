using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Exercise;
using RehabTrack.Web.Components;
using RehabTrack.Web.Shared.Links;

namespace RehabTrack.Web.Tests.Walk;

/// <summary>
/// Every endpoint of the running app, for every role, nobody and a vet of another practice, with their own records, a neighbour's, another
/// practice's and an id of nothing. What is not theirs is answered like what is not there, and no refused answer holds a word of it.
/// </summary>
public sealed partial class WalkTests(WalkHouse house) : IClassFixture<WalkHouse>
{
    /// <summary>Files that came since the app was built; a published app has none.</summary>
    private const string FilesMadeSince = "{**path:file}";

    private static readonly Whose[] Everyones = Enum.GetValues<Whose>();

    public static TheoryData<string> Addresses => [.. WalkTable.Rows.Where(row => row.Method != "POST").Select(row => row.ToString())];

    /// <summary>The forms that are taken without a live connection, but those that would end the walk.</summary>
    public static TheoryData<string> PlainForms =>
        [.. WalkTable.Rows.Where(row => row is { Form: not null } or { Method: "POST", EndsSession: false }).Select(row => row.ToString())];

    public static TheoryData<string> Forms => [.. WalkTable.Rows.Where(TakesForms).Select(row => row.ToString())];

    [Fact]
    public void Every_endpoint_stands_in_the_table_and_every_row_is_an_endpoint()
    {
        string[] known = [.. WalkTable.Rows.SelectMany(KeysOf).Order(StringComparer.Ordinal)];

        Assert.Equal(known.Distinct(StringComparer.Ordinal), known);
        Assert.Empty(Endpoints().Except(known, StringComparer.Ordinal));
        Assert.Empty(known.Except(Endpoints(), StringComparer.Ordinal));
    }

    [Fact]
    public void An_endpoint_without_a_row_is_found()
    {
        IEnumerable<string> known = WalkTable.Rows.Where(row => row.Pattern != "/practice/trail/trail.csv").SelectMany(KeysOf);

        Assert.Equal(["POST /practice/trail/trail.csv"], Endpoints().Except(known, StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("/people", "Trainer", true)]
    [InlineData("/horses/{Id:guid}", "Trainer", true)]
    [InlineData("/horses/{Id:guid}", "Assistant", false)]
    [InlineData("/horses/{id:guid}/photo", "Stranger", false)]
    public async Task A_row_that_lets_in_one_too_many_or_one_too_few_is_found(string pattern, string who, bool isTooMany)
    {
        WalkRow row = WalkTable.Rows.First(row => row.Method == "GET" && row.Pattern == pattern);
        Walker walker = Enum.Parse<Walker>(who);
        WalkRow wrong = row with { Allowed = isTooMany ? [.. row.Allowed, walker] : [.. row.Allowed.Where(allowed => allowed != walker)] };

        await Assert.ThrowsAsync<Xunit.Sdk.TrueException>(() => WalkAsync(wrong, walker, whose => AskAsync(wrong, walker, whose)));
    }

    [Theory]
    [MemberData(nameof(Addresses))]
    public async Task An_address_answers_only_to_whom_the_table_says(string name)
    {
        WalkRow row = RowOf(name);
        foreach (Walker walker in Enum.GetValues<Walker>())
        {
            await WalkAsync(row, walker, whose => AskAsync(row, walker, whose));
        }
    }

    [Theory]
    [MemberData(nameof(Forms))]
    public async Task A_form_without_its_token_does_nothing_for_anybody(string name)
    {
        WalkRow row = RowOf(name);
        foreach (Walker walker in Enum.GetValues<Walker>())
        {
            using HttpResponseMessage answer = await house
                .BrowserOf(walker)
                .PostAsync(AddressOf(row, row.Subject == Subject.None ? "" : IdOf(row, Whose.Own)), new FormUrlEncodedContent([]));
            WalkAnswer read = await WalkAnswer.ReadAsync(answer, "");
            bool isLetIn = row.Allowed.Contains(walker);

            Assert.True(
                // What is refused is told by a page, and that one takes no form without a token either.
                read.Status == HttpStatusCode.BadRequest
                    || (!isLetIn && read.IsRefused),
                $"{name}, {walker}: {read.Status} {read.Location}"
            );
        }
    }

    [Theory]
    [MemberData(nameof(PlainForms))]
    public async Task A_form_with_its_token_reaches_only_what_is_ones_own(string name)
    {
        WalkRow row = RowOf(name);
        foreach (Walker walker in Enum.GetValues<Walker>().Where(walker => walker != Walker.Nobody))
        {
            await WalkAsync(row, walker, whose => SendAsync(row, walker, whose), isForm: true);
        }

        await NothingWasWrittenAsync();
    }

    [Theory]
    [InlineData("Owner")]
    [InlineData("Trainer")]
    [InlineData("ReferringVet")]
    public async Task Behind_a_link_only_the_pages_of_its_role_answer_and_all_else_is_one_page(string role)
    {
        Walker walker = Enum.Parse<Walker>(role);
        string link = house.Links[walker];
        string dead = await DeadAsync();
        using HttpClient browser = house.App.BrowserElsewhere();
        foreach (WalkRow row in WalkTable.Rows.Where(row => row.Method == "GET"))
        {
            bool isBehind = row.BehindLinkOf.Contains(walker);
            foreach (Whose whose in isBehind && row.Subject != Subject.None ? Everyones : [Whose.Own])
            {
                string address = link + BelowLink(row, whose);
                bool opens = isBehind && whose == Whose.Own;
                string text = await TextAsync(browser, address, opens ? HttpStatusCode.OK : HttpStatusCode.NotFound);

                Assert.Equal((row.ToString(), whose, opens), (row.ToString(), whose, text != dead));
            }
        }
    }

    [Theory]
    [InlineData("Owner")]
    [InlineData("Trainer")]
    [InlineData("ReferringVet")]
    public async Task Behind_a_link_only_the_forms_of_its_role_take_anything_and_only_for_its_own_horse(string role)
    {
        Walker walker = Enum.Parse<Walker>(role);
        string link = house.Links[walker];
        string dead = await DeadAsync();
        foreach (WalkRow row in WalkTable.Rows.Where(TakesForms))
        {
            using HttpClient browser = house.App.BrowserElsewhere();
            // A report has no form, so whoever reads it has no token either.
            string? token = walker == Walker.ReferringVet ? null : await LinkTokenAsync(browser, link);
            bool isBehind = row.BehindLinkOf.Contains(walker) && (row.Method == "POST" || row.Form is not null);
            // What is allowed is written elsewhere; here nothing shall be.
            foreach (Whose whose in isBehind ? Everyones.Where(whose => whose != Whose.Own) : Everyones)
            {
                using FormUrlEncodedContent form = FormOf(row, token);
                using HttpResponseMessage answer = await browser.PostAsync(link + BelowLink(row, whose), form);
                string text = await answer.Content.ReadAsStringAsync();
                string to = answer.Headers.Location?.OriginalString ?? "";

                Assert.True(
                    (answer.StatusCode == HttpStatusCode.NotFound && text == dead)
                        // The list of one's own horses, which says there that this one is not among them.
                        || (isBehind && row.RefusesOnTheList && to.Contains("refused=not-found", StringComparison.Ordinal)),
                    $"{row}, {whose}: {answer.StatusCode} {to}"
                );
            }
        }

        await NothingWasWrittenAsync();
    }

    [Theory]
    [InlineData("HEAD")]
    [InlineData("OPTIONS")]
    [InlineData("PUT")]
    [InlineData("DELETE")]
    [InlineData("PATCH")]
    [InlineData("TRACE")]
    public async Task Behind_a_link_no_other_method_opens_anything(string method)
    {
        foreach (Walker walker in (Walker[])[Walker.Owner, Walker.Trainer, Walker.ReferringVet])
        {
            using HttpClient browser = house.App.BrowserElsewhere();
            foreach (WalkRow row in WalkTable.Rows)
            {
                using HttpRequestMessage request = new(new HttpMethod(method), house.Links[walker] + BelowLink(row, Whose.Own));
                using HttpResponseMessage answer = await browser.SendAsync(request);
                bool isRead = method == "HEAD" && row.Method == "GET" && row.BehindLinkOf.Contains(walker);

                Assert.True(
                    answer.StatusCode == HttpStatusCode.NotFound || (isRead && answer.StatusCode == HttpStatusCode.OK),
                    $"{walker} {method} {row}: {answer.StatusCode}"
                );
            }
        }
    }

    /// <summary>The address of a row as it would stand below a link; the page that all begins with is the link's own there.</summary>
    private string BelowLink(WalkRow row, Whose whose) => row.Pattern == "/" ? "/horses/" : AddressOf(row, IdOf(row, whose));

    private async Task<string> DeadAsync()
    {
        using HttpClient browser = house.App.BrowserElsewhere();
        return await TextAsync(browser, ShareAddress.PathOf(AddressSecret.Make().Text), HttpStatusCode.NotFound);
    }

    private async Task<string> LinkTokenAsync(HttpClient browser, string link)
    {
        string page = await TextAsync(browser, $"{link}/concern/{house.RecordsOf(Whose.Own).Horse}", HttpStatusCode.OK);
        string token = Token().Match(page).Groups["value"].Value;
        Assert.NotEmpty(token);
        return token;
    }

    private static FormUrlEncodedContent FormOf(WalkRow row, string? token) =>
        new([
            .. token is null ? [] : (KeyValuePair<string, string>[])[KeyValuePair.Create("__RequestVerificationToken", token)],
            .. row.Form is { } handler ? [KeyValuePair.Create("_handler", handler)] : Array.Empty<KeyValuePair<string, string>>(),
            .. row.Fields.Select(field => KeyValuePair.Create(field.Name, field.Value)),
        ]);

    private static bool TakesForms(WalkRow row) => row.Method == "POST" || row.IsPage;

    private static WalkRow RowOf(string name) => WalkTable.Rows.Single(row => row.ToString() == name);

    private static IEnumerable<string> KeysOf(WalkRow row) =>
        row.IsPage ? [$"GET {row.Pattern}", $"POST {row.Pattern}"] : [$"{row.Method} {row.Pattern}"];

    /// <summary>All endpoints by method and pattern, but the files that are everybody's.</summary>
    private IEnumerable<string> Endpoints() =>
        house
            .App.Services.GetRequiredService<EndpointDataSource>()
            .Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint =>
                !endpoint.Metadata.Any(mark => mark.GetType().Name == "StaticAssetDescriptor")
                && endpoint.RoutePattern.RawText != FilesMadeSince
            )
            .SelectMany(endpoint =>
                (endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? ["*"]).Select(method =>
                    $"{method} /{endpoint.RoutePattern.RawText!.Trim('/')}"
                )
            )
            .Distinct(StringComparer.Ordinal);

    /// <summary>Asks one endpoint as one person with everybody's records, and holds the answers against the table and against each other.</summary>
    private async Task WalkAsync(WalkRow row, Walker walker, Func<Whose, Task<WalkAnswer>> ask, bool isForm = false)
    {
        Dictionary<Whose, WalkAnswer> answers = [];
        foreach (Whose whose in row.Subject == Subject.None ? [Whose.Own] : Everyones)
        {
            // What is allowed is written elsewhere; here nothing shall be.
            if (isForm && row.Subject != Subject.None && IsLetIn(row, walker, whose))
            {
                continue;
            }

            WalkAnswer answer = await ask(whose);
            string said = $"{row}, {walker}, {whose}: {answer.Status} {answer.Location}";
            if (IsLetIn(row, walker, whose))
            {
                Assert.True(answer.Status == row.Answer && !answer.SendsToSignIn, said);
            }
            else
            {
                Assert.True(
                    row.ReadsLater && row.Allowed.Contains(walker)
                        ? answer.Status == HttpStatusCode.OK
                        : answer.IsRefused
                            // A page without its record has no form to take what was sent.
                            || (isForm && row.Form is not null && answer.Status == HttpStatusCode.BadRequest),
                    said
                );
                Assert.True(walker != Walker.Nobody || answer.SendsToSignIn || row.Allowed.Contains(walker), said);
                Assert.True(row.RefusesOnTheList || !answer.IsRefusedOnTheList, said);
                answers[whose] = answer;
            }

            foreach (string mark in house.Marks.Where(mark => !MayRead(row, walker, whose, mark)))
            {
                Assert.False(answer.Content.Contains(mark, StringComparison.OrdinalIgnoreCase), $"{said} tells {mark}.");
                Assert.False(answer.Location.Contains(mark, StringComparison.OrdinalIgnoreCase), $"{said} tells {mark}.");
            }
        }

        Assert.True(answers.Values.Distinct().Count() <= 1, $"{row}, {walker} tells what is there: {string.Join(" | ", answers.Values)}");
    }

    /// <summary>Whether the table lets a person in with these records.</summary>
    private static bool IsLetIn(WalkRow row, Walker walker, Whose whose) =>
        row.Allowed.Contains(walker)
        && row.Subject switch
        {
            Subject.None => true,
            // Whoever holds the secret; the neighbour's was taken back.
            Subject.Calendar => whose is Whose.Own or Whose.OtherPractices,
            _ => whose switch
            {
                Whose.Own => walker != Walker.Stranger,
                Whose.Neighbours => walker is Walker.Administrator or Walker.Vet or Walker.Assistant,
                Whose.OtherPractices => walker == Walker.Stranger,
                Whose.Nobodys => false,
            },
        };

    /// <summary>Whether an answer may hold a word of somebody's records.</summary>
    private bool MayRead(WalkRow row, Walker walker, Whose whose, string mark)
    {
        if (!IsLetIn(row, walker, whose))
        {
            return false;
        }

        if (row.Subject == Subject.Calendar)
        {
            return (mark == house.RecordsOf(Whose.OtherPractices).Mark) == (whose == Whose.OtherPractices);
        }

        return row.Subject == Subject.None ? MayReadOf(walker, mark) : MayReadOf(walker, mark) && walker != Walker.Nobody;
    }

    private bool MayReadOf(Walker walker, string mark) =>
        walker switch
        {
            // Until there are passwords the page to sign in names who may.
            Walker.Nobody => false,
            Walker.Stranger => mark == house.RecordsOf(Whose.OtherPractices).Mark,
            Walker.Administrator or Walker.Vet or Walker.Assistant => mark != house.RecordsOf(Whose.OtherPractices).Mark,
            _ => mark == house.RecordsOf(Whose.Own).Mark,
        };

    private string IdOf(WalkRow row, Whose whose) =>
        row.Subject == Subject.None ? ""
        : whose != Whose.Nobodys ? house.RecordsOf(whose).Of(row.Subject)
        : row.Subject == Subject.Calendar ? AddressSecret.Make().Text
        : Guid.CreateVersion7().ToString();

    private static string AddressOf(WalkRow row, string id) => Parameter().Replace(row.Pattern, id);

    private async Task<WalkAnswer> AskAsync(WalkRow row, Walker walker, Whose whose)
    {
        string id = IdOf(row, whose);
        string address = AddressOf(row, id);
        HttpClient browser = house.BrowserOf(walker);
        using HttpResponseMessage answer = row.Pattern is "/_blazor/negotiate" or "/_blazor/disconnect"
            ? await browser.PostAsync($"{address}?negotiateVersion=1", null)
            : await browser.GetAsync(address);
        return await WalkAnswer.ReadAsync(answer, id);
    }

    private async Task<WalkAnswer> SendAsync(WalkRow row, Walker walker, Whose whose)
    {
        string id = IdOf(row, whose);
        HttpClient browser = house.BrowserOf(walker);
        using HttpResponseMessage page = await browser.GetAsync(FormPageOf(walker));
        string token = Token().Match(await page.Content.ReadAsStringAsync()).Groups["value"].Value;
        Assert.NotEmpty(token);
        using FormUrlEncodedContent form = FormOf(row, token);
        using HttpResponseMessage answer = await browser.PostAsync(AddressOf(row, id), form);
        return await WalkAnswer.ReadAsync(answer, id);
    }

    /// <summary>A page that gives a person a token, since it holds a form.</summary>
    private static string FormPageOf(Walker walker) =>
        walker switch
        {
            Walker.Trainer => "/yard",
            Walker.Owner => "/progress",
            Walker.ReferringVet => "/report",
            _ => "/",
        };

    private async Task NothingWasWrittenAsync()
    {
        foreach (Whose whose in Everyones.Where(whose => whose != Whose.Nobodys))
        {
            WalkRecords records = house.RecordsOf(whose);
            ExerciseView exercise = (
                await house
                    .App.Services.GetRequiredService<GetExercise>()
                    .ExecuteAsync(house.People[whose == Whose.OtherPractices ? Walker.Stranger : Walker.Vet], records.Horse)
            ).Value;

            Assert.Empty(exercise.Lines);
            Assert.True(exercise.Horse.HasPhoto);
        }
    }

    private static async Task<string> TextAsync(HttpClient browser, string address, HttpStatusCode expected)
    {
        using HttpResponseMessage answer = await browser.GetAsync(address);
        Assert.Equal((address, expected), (address, answer.StatusCode));
        return await answer.Content.ReadAsStringAsync();
    }

    [GeneratedRegex("\\{[^}]+\\}", RegexOptions.None, 1000)]
    private static partial Regex Parameter();

    [GeneratedRegex("name=\"__RequestVerificationToken\"[^>]*value=\"(?<value>[^\"]+)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Token();
}
