using System.Net;
using System.Text;
using RehabTrack.Records.History;
using RehabTrack.Web.Components.Audit;
using RehabTrack.Web.Features.Trail;
using RehabTrack.Web.Tests.Hosting;

namespace RehabTrack.Web.Tests.Features.Trail;

public sealed class TrailExportTests(RunningApp app) : IClassFixture<RunningApp>
{
    [Fact]
    public async Task A_vet_takes_the_trail_out_by_a_form()
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        string token = await RunningApp.TokenAsync(browser, "/practice/trail");

        using HttpResponseMessage answer = await PostAsync(browser, token, ("kind", "Person"));

        string[] lines = Encoding.UTF8.GetString(await answer.Content.ReadAsByteArrayAsync()).TrimStart('\uFEFF').Split('\n');
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("text/csv", answer.Content.Headers.ContentType!.MediaType);
        Assert.StartsWith("number,at_utc,at_practice,person,use_case,kind,", lines[0], StringComparison.Ordinal);
        Assert.Contains("Tess Lunge", string.Concat(lines), StringComparison.Ordinal);
        Assert.All(lines[1..].Where(line => line.Trim().Length > 0), line => Assert.Contains(",Person,", line, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Without_the_forms_token_nothing_is_taken_out()
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);

        using HttpResponseMessage answer = await PostAsync(browser, "none");
        using HttpResponseMessage asked = await browser.GetAsync(TrailExport.Address);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.NotEqual(HttpStatusCode.OK, asked.StatusCode);
    }

    [Fact]
    public async Task A_trainer_gets_neither_page_nor_file()
    {
        using HttpClient browser = await app.BrowserAsync(app.Trainer);

        using HttpResponseMessage page = await browser.GetAsync("/practice/trail");
        using HttpResponseMessage file = await PostAsync(browser, "none");

        Assert.Equal(HttpStatusCode.Forbidden, page.StatusCode);
        Assert.False(file.IsSuccessStatusCode);
        Assert.NotEqual("text/csv", file.Content.Headers.ContentType?.MediaType);
    }

    [Fact]
    public void Every_note_of_access_has_a_name() =>
        Assert.All(Enum.GetValues<AccessEvent>(), what => Assert.NotEmpty(AccessEventNames.Of(what)));

    [Fact]
    public void Every_fault_has_a_sentence() =>
        Assert.All(
            Enum.GetValues<TrailFault>(),
            why => Assert.EndsWith(".", TrailFaults.Sentence(new TrailBreak(4, DateTime.UnixEpoch, why)), StringComparison.Ordinal)
        );

    [Fact]
    public void A_filter_stands_in_the_address_and_is_read_back_from_it()
    {
        TrailFilter filter = new()
        {
            PersonId = Guid.NewGuid(),
            Kind = "Horse",
            From = new DateOnly(2026, 1, 2),
            To = new DateOnly(2026, 3, 4),
            Before = 77,
        };

        Dictionary<string, string> parameters = TrailQuery
            .AddressOf(filter)
            .Split('?')[1]
            .Split('&')
            .Select(one => one.Split('='))
            .ToDictionary(one => one[0], one => one[1], StringComparer.Ordinal);

        Assert.Equal(filter, TrailQuery.Parse(parameters.GetValueOrDefault));
        Assert.Equal("/practice/trail", TrailQuery.AddressOf(new TrailFilter()));
    }

    private static Task<HttpResponseMessage> PostAsync(HttpClient browser, string token, params (string Name, string Value)[] more) =>
        browser.PostAsync(
            TrailExport.Address,
            new FormUrlEncodedContent(
                more.Append(("__RequestVerificationToken", token)).Select(one => KeyValuePair.Create(one.Item1, one.Item2))
            )
        );
}
