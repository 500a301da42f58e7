using System.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Components;
using RehabTrack.Web.Shared.Links;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Shared;

/// <summary>A link of each kind: while it lives it opens its page, and dead for whatever reason it answers as one that never was.</summary>
public sealed class DeadLinkTests(RunningApp app) : IClassFixture<RunningApp>
{
    private readonly ShareHouse _house = new(app.Services, app.Vet);

    [Theory]
    [InlineData(HorseRelation.Owner)]
    [InlineData(HorseRelation.Trainer)]
    [InlineData(HorseRelation.ReferringVet)]
    public async Task Unknown_expired_and_taken_back_are_one_answer_to_the_byte(HorseRelation relation)
    {
        string name = $"Horse of {relation}";
        Guid person = await _house.PersonAsync($"Reader {relation}", RoleOf(relation));
        (string expired, Saved expiredLink) = await LinkAsync(relation, person, $"{name} 1");
        using HttpClient browser = app.Browser();
        Assert.Contains(name, WebUtility.HtmlDecode(await browser.GetStringAsync(expired)), StringComparison.Ordinal);
        await ExpireAsync(expiredLink.Id);
        (string Body, string Headers) unknown = await AnswerAsync(browser, ShareAddress.PathOf(AddressSecret.Make().Text));
        Assert.Contains(OutsidePages.NoWork, WebUtility.HtmlDecode(unknown.Body), StringComparison.Ordinal);
        Assert.Equal(unknown, await AnswerAsync(browser, expired));
        (string revoked, Saved revokedLink) = await LinkAsync(relation, person, $"{name} 2");
        Assert.Contains(name, WebUtility.HtmlDecode(await browser.GetStringAsync(revoked)), StringComparison.Ordinal);
        await _house.RevokeAsync(revokedLink);

        Assert.Equal(unknown, await AnswerAsync(browser, revoked));
    }

    [Fact]
    public async Task A_referring_vets_link_shows_the_report_without_script_and_nothing_else_of_the_horse()
    {
        Guid reader = await _house.PersonAsync("Anwen Quill", Role.ReferringVet);
        Guid horse = await _house.HorseAsync(
            "Reported Bay",
            await _house.PersonAsync("Owner Alder", Role.Owner),
            await _house.PersonAsync("Trainer Cedar", Role.Trainer),
            reader
        );
        Guid injury = await _house.SignedCaseAsync(horse);
        string path = await _house.ReportLinkAsync(injury, reader, "Thank you for sending this horse.");
        using HttpClient browser = app.Browser();
        using HttpResponseMessage answer = await browser.GetAsync(path);
        string page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync());

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        foreach (string told in (string[])["Reported Bay", "Thank you for sending this horse.", "0.3", "18", OutsidePages.Caution])
        {
            Assert.Contains(told, page, StringComparison.Ordinal);
        }

        foreach (string hidden in (string[])["blazor.web", "_blazor", "sign-out", "internal of", "Owner Alder", "Trainer Cedar"])
        {
            Assert.DoesNotContain(hidden, page, StringComparison.OrdinalIgnoreCase);
        }

        Assert.Equal(["no-referrer"], answer.Headers.GetValues("Referrer-Policy"));
        Assert.True(answer.Headers.CacheControl!.NoStore);
        Assert.Contains("noindex", Assert.Single(answer.Headers.GetValues("X-Robots-Tag")), StringComparison.Ordinal);
        (string Body, string Headers) unknown = await AnswerAsync(browser, ShareAddress.PathOf(AddressSecret.Make().Text));
        foreach (
            string below in (string[])["/yard", "/progress", $"/concern/{horse}", $"/cases/{injury}", $"/cases/{injury}/reports", "/people"]
        )
        {
            Assert.Equal((below, unknown), (below, await AnswerAsync(browser, path + below)));
        }
    }

    private async Task<(string Path, Saved Link)> LinkAsync(HorseRelation relation, Guid person, string horseName)
    {
        Guid horse = await _house.HorseAsync(
            horseName,
            relation == HorseRelation.Owner ? person : null,
            relation == HorseRelation.Trainer ? person : null,
            relation == HorseRelation.ReferringVet ? person : null
        );
        if (relation != HorseRelation.ReferringVet)
        {
            return await _house.LinkAsync(person, relation, relation == HorseRelation.Owner ? horse : null);
        }

        Guid injury = await _house.SignedCaseAsync(horse);
        return await _house.ReportLinkAsync(person, (await _house.ReleaseAsync(injury, person, "")).Id);
    }

    private async Task ExpireAsync(Guid link)
    {
        await using RecordsContext records = await app
            .Services.GetRequiredService<RecordsAccess>()
            .OpenAsync(app.Vet.PracticeId, null, default);
        int changed = await records
            .ShareLinks.Where(share => share.Id == link)
            .ExecuteUpdateAsync(share => share.SetProperty(row => row.ExpiresAt, DateTime.UtcNow.AddSeconds(-1)));
        Assert.Equal(1, changed);
    }

    private static Role RoleOf(HorseRelation relation) =>
        relation switch
        {
            HorseRelation.Owner => Role.Owner,
            HorseRelation.Trainer => Role.Trainer,
            HorseRelation.ReferringVet => Role.ReferringVet,
        };

    /// <summary>The answer, and its headers but for the moment.</summary>
    private static async Task<(string Body, string Headers)> AnswerAsync(HttpClient browser, string address)
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
}
