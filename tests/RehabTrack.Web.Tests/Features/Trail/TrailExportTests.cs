using System.Net;
using System.Text;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Records.Cases;
using RehabTrack.Records.History;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Room;
using RehabTrack.Web.Components.Audit;
using RehabTrack.Web.Features.Trail;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

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
    public async Task The_lines_of_one_case_are_taken_out_alone_from_a_page_that_says_so()
    {
        Guid one = await CaseAsync("Trailed Bay");
        Guid other = await CaseAsync("Trailed Grey");
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        string address = TrailQuery.AddressOf(new TrailFilter { CaseId = one });
        string page = WebUtility.HtmlDecode(await browser.GetStringAsync(address));
        string token = await RunningApp.TokenAsync(browser, address);

        using HttpResponseMessage answer = await PostAsync(browser, token, ("case", one.ToString()));

        string[] lines = (await answer.Content.ReadAsStringAsync()).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Contains(TrailTexts.OfCase, page, StringComparison.Ordinal);
        Assert.Contains($"name=\"case\" value=\"{one}\"", page, StringComparison.Ordinal);
        Assert.True(lines.Length > 1);
        Assert.All(lines[1..], line => Assert.Contains(one.ToString(), line, StringComparison.Ordinal));
        Assert.DoesNotContain(lines, line => line.Contains(other.ToString(), StringComparison.Ordinal));
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
            CaseId = Guid.NewGuid(),
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

    private async Task<Guid> CaseAsync(string horse)
    {
        Saved kept = (
            await app
                .Services.GetRequiredService<SaveHorse>()
                .ExecuteAsync(app.Vet, new SaveHorseInput { CommandId = Guid.NewGuid(), Name = horse })
        ).Value;
        return (
            await app
                .Services.GetRequiredService<OpenCase>()
                .ExecuteAsync(
                    app.Vet,
                    new OpenCaseInput
                    {
                        CommandId = Guid.NewGuid(),
                        HorseId = kept.Id,
                        Limb = Limb.LeftHind,
                        Structure = Structure.SuspensoryLigament,
                    }
                )
        ).Value.Id;
    }

    private static Task<HttpResponseMessage> PostAsync(HttpClient browser, string token, params (string Name, string Value)[] more) =>
        browser.PostAsync(
            TrailExport.Address,
            new FormUrlEncodedContent(
                more.Append(("__RequestVerificationToken", token)).Select(one => KeyValuePair.Create(one.Item1, one.Item2))
            )
        );
}
