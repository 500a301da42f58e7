using System.Net;
using System.Text.Json;
using RehabTrack.Web.Features.People;
using RehabTrack.Web.Tests.Hosting;

namespace RehabTrack.Web.Tests.Features.People;

/// <summary>What is held of a person is taken out by a form, by whoever may, and it is noted.</summary>
public sealed class PersonFileTests(RunningApp app) : IClassFixture<RunningApp>
{
    [Fact]
    public async Task A_vet_takes_out_what_is_held_of_a_person()
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        string token = await RunningApp.TokenAsync(browser, "/practice/trail");

        using HttpResponseMessage answer = await PostAsync(browser, app.Trainer.PersonId, token);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/json", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal("person.json", answer.Content.Headers.ContentDisposition!.FileName);
        using JsonDocument held = JsonDocument.Parse(await answer.Content.ReadAsStringAsync());
        Assert.Equal(app.Trainer.Name, held.RootElement.GetProperty("person").GetProperty("name").GetString());
    }

    [Fact]
    public async Task Without_the_forms_token_or_for_nobody_nothing_is_taken_out()
    {
        using HttpClient browser = await app.BrowserAsync(app.Vet);
        string token = await RunningApp.TokenAsync(browser, "/practice/trail");

        using HttpResponseMessage untrusted = await PostAsync(browser, app.Trainer.PersonId, "none");
        using HttpResponseMessage nobody = await PostAsync(browser, Guid.NewGuid(), token);

        Assert.Equal(HttpStatusCode.BadRequest, untrusted.StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, nobody.StatusCode);
    }

    [Fact]
    public async Task A_trainer_takes_out_nothing_not_even_of_themselves()
    {
        using HttpClient browser = await app.BrowserAsync(app.Trainer);

        using HttpResponseMessage answer = await PostAsync(browser, app.Trainer.PersonId, "none");

        Assert.False(answer.IsSuccessStatusCode);
        Assert.DoesNotContain(app.Trainer.Name, await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    private static Task<HttpResponseMessage> PostAsync(HttpClient browser, Guid person, string token) =>
        browser.PostAsync(
            PersonFile.AddressOf(person),
            new FormUrlEncodedContent([KeyValuePair.Create("__RequestVerificationToken", token)])
        );
}
