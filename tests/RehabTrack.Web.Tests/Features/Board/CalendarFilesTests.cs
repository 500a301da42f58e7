using System.Net;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Feeds;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Room;
using RehabTrack.Web.Components;
using RehabTrack.Web.Features.Board;
using RehabTrack.Web.Tests.Hosting;

namespace RehabTrack.Web.Tests.Features.Board;

public sealed class CalendarFilesTests(RunningApp app) : IClassFixture<RunningApp>
{
    [Fact]
    public void A_secret_has_256_bits_is_never_the_same_and_is_kept_as_its_hash()
    {
        AddressSecret[] secrets = [.. Enumerable.Range(0, 100).Select(_ => AddressSecret.Make())];

        Assert.All(secrets, secret => Assert.Matches("^[A-Za-z0-9_-]{43}$", secret.Text));
        Assert.Equal(100, secrets.DistinctBy(secret => secret.Text).Count());
        // SHA-256 of "abc": FIPS 180-4, example.
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", new AddressSecret("abc").Hash);
    }

    [Fact]
    public async Task A_calendar_program_reads_the_secret_address_without_signing_in_until_it_is_renewed()
    {
        Guid booking = await BookAsync("Thistle Vane");
        AddressSecret first = await RenewAsync();
        using HttpClient program = app.Browser();

        using HttpResponseMessage answer = await program.GetAsync(CalendarFiles.FeedPath(first));
        string file = await answer.Content.ReadAsStringAsync();
        AddressSecret second = await RenewAsync();
        using HttpResponseMessage older = await program.GetAsync(CalendarFiles.FeedPath(first));
        AddressSecret made = AddressSecret.Make();
        using HttpResponseMessage unknown = await program.GetAsync(CalendarFiles.FeedPath(made));
        using HttpResponseMessage renewed = await program.GetAsync(CalendarFiles.FeedPath(second));

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("text/calendar; charset=utf-8", answer.Content.Headers.ContentType!.ToString());
        Assert.Contains($"UID:{booking:D}", file, StringComparison.Ordinal);
        Assert.Contains("SUMMARY:Thistle Vane: recheck", file, StringComparison.Ordinal);
        Assert.DoesNotContain("suspensory", file, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(HttpStatusCode.OK, renewed.StatusCode);
        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.NotFound), (older.StatusCode, unknown.StatusCode));
        // The page leads back to itself, by the address that was asked.
        Assert.Equal(
            (await older.Content.ReadAsStringAsync()).Replace(first.Text, "", StringComparison.Ordinal),
            (await unknown.Content.ReadAsStringAsync()).Replace(made.Text, "", StringComparison.Ordinal)
        );
        Assert.Equal(Names(older), Names(unknown));
    }

    [Fact]
    public async Task A_program_that_has_the_newest_file_is_told_so()
    {
        await BookAsync("Marram Bay");
        AddressSecret secret = await RenewAsync();
        using HttpClient program = app.Browser();
        using HttpResponseMessage first = await program.GetAsync(CalendarFiles.FeedPath(secret));

        using HttpRequestMessage again = new(HttpMethod.Get, CalendarFiles.FeedPath(secret));
        again.Headers.IfNoneMatch.Add(first.Headers.ETag!);
        using HttpResponseMessage second = await program.SendAsync(again);

        Assert.Equal(HttpStatusCode.NotModified, second.StatusCode);
    }

    [Fact]
    public async Task One_recheck_is_a_download_for_the_practice_only()
    {
        Guid booking = await BookAsync("Fenland Reed");
        using HttpClient vet = await app.BrowserAsync(app.Vet);
        using HttpClient trainer = await app.BrowserAsync(app.Trainer);
        using HttpClient stranger = app.Browser();

        using HttpResponseMessage file = await vet.GetAsync(CalendarFiles.VisitPath(booking));
        using HttpResponseMessage refused = await trainer.GetAsync(CalendarFiles.VisitPath(booking));
        using HttpResponseMessage door = await stranger.GetAsync(CalendarFiles.VisitPath(booking));
        using HttpResponseMessage missing = await vet.GetAsync(CalendarFiles.VisitPath(Guid.CreateVersion7()));

        Assert.Equal("recheck.ics", file.Content.Headers.ContentDisposition!.FileName);
        Assert.Single(Ical.Net.Calendar.Load(await file.Content.ReadAsStringAsync())!.Events);
        Assert.Equal(
            (HttpStatusCode.Forbidden, HttpStatusCode.Redirect, HttpStatusCode.NotFound),
            (refused.StatusCode, door.StatusCode, missing.StatusCode)
        );
    }

    private static IEnumerable<string> Names(HttpResponseMessage answer) =>
        answer.Headers.Concat(answer.Content.Headers).Select(header => header.Key).Order(StringComparer.Ordinal);

    private async Task<AddressSecret> RenewAsync()
    {
        AddressSecret secret = AddressSecret.Make();
        Outcome<Saved> renewed = await app
            .Services.GetRequiredService<RenewFeed>()
            .ExecuteAsync(app.Vet, new RenewFeedInput(Guid.CreateVersion7(), secret.Hash));
        Assert.True(renewed.Succeeded);
        return secret;
    }

    private async Task<Guid> BookAsync(string name)
    {
        Guid horse = (
            await app
                .Services.GetRequiredService<SaveHorse>()
                .ExecuteAsync(app.Vet, new SaveHorseInput { CommandId = Guid.CreateVersion7(), Name = name })
        )
            .Value
            .Id;
        Guid injury = (
            await app
                .Services.GetRequiredService<OpenCase>()
                .ExecuteAsync(
                    app.Vet,
                    new OpenCaseInput
                    {
                        CommandId = Guid.CreateVersion7(),
                        HorseId = horse,
                        Limb = Limb.LeftHind,
                        Structure = Structure.SuspensoryLigament,
                    }
                )
        ).Value.Id;
        DateOnly day = DateOnly.FromDateTime(TimeProvider.System.GetUtcNow().UtcDateTime).AddDays(30);
        return (
            await app
                .Services.GetRequiredService<BookRecheck>()
                .ExecuteAsync(
                    app.Vet,
                    new BookRecheckInput(Guid.CreateVersion7(), injury, new BookingPlan { Date = day, Time = new TimeOnly(9, 30) })
                )
        )
            .Value
            .Id;
    }
}
