using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Shares;
using RehabTrack.Web.Account;
using RehabTrack.Web.Components;
using RehabTrack.Web.Hosting;
using RehabTrack.Web.Shared.Links;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Shared;

/// <summary>Guessing is slowed, and what was asked is told to nobody.</summary>
public sealed class ShareLimitsTests(RunningApp app) : IClassFixture<RunningApp>
{
    [Fact]
    public async Task Who_guesses_too_often_is_put_off_with_the_sentence_whatever_the_link_and_the_rest_of_the_app_is_not()
    {
        ShareHouse house = new(app.Services, app.Vet);
        Guid owner = await house.PersonAsync("Owner Alder", Role.Owner);
        string living = (await house.LinkAsync(owner, HorseRelation.Owner, await house.HorseAsync("Guessed Grey", owner, null))).Path;
        using HttpClient browser = app.Browser();
        for (int guess = 0; guess < new ShareSettings().WrongPerMinute; guess++)
        {
            using HttpResponseMessage wrong = await browser.GetAsync(ShareAddress.PathOf(AddressSecret.Make().Text));
            Assert.Equal(HttpStatusCode.NotFound, wrong.StatusCode);
        }

        foreach (string address in (string[])[ShareAddress.PathOf(AddressSecret.Make().Text), living])
        {
            using HttpResponseMessage busy = await browser.GetAsync(address);
            string page = WebUtility.HtmlDecode(await busy.Content.ReadAsStringAsync());
            Assert.Equal(HttpStatusCode.TooManyRequests, busy.StatusCode);
            Assert.Equal(ShareLimits.RetryAfter, busy.Headers.RetryAfter!.ToString());
            Assert.Contains(OutsidePages.NoWork, page, StringComparison.Ordinal);
            Assert.Contains(OutsidePages.LinkBusy, page, StringComparison.Ordinal);
        }

        using HttpResponseMessage door = await browser.GetAsync("/sign-in");
        Assert.Equal(HttpStatusCode.OK, door.StatusCode);
    }

    [Theory]
    [InlineData("203.0.113.7", "203.0.113.7", true)]
    [InlineData("203.0.113.7", "203.0.113.8", false)]
    [InlineData("203.0.113.7", "::ffff:203.0.113.7", true)]
    [InlineData("2001:db8:1:2::1", "2001:db8:1:2:ffff::9", true)]
    [InlineData("2001:db8:1:2::1", "2001:db8:1:3::1", false)]
    public void An_address_is_counted_with_its_network(string one, string other, bool together) =>
        Assert.Equal(together, Askers.NetworkOf(IPAddress.Parse(one)) == Askers.NetworkOf(IPAddress.Parse(other)));

    [Fact]
    public async Task The_secret_stands_in_no_log_however_much_is_logged()
    {
        string folder = Directory.CreateTempSubdirectory("rehabtrack-logs-").FullName;
        using HeardLogs heard = new(withScopes: true);
        StartOptions options = StartOptions.Parse([
            "--data",
            folder,
            "--urls",
            "http://127.0.0.1:0",
            "--Logging:LogLevel:Default=Trace",
            "--Logging:Console:LogLevel:Default=None",
        ]);
        await using (WebApplication server = WebHost.Build(options))
        {
            server.Services.GetRequiredService<ILoggerFactory>().AddProvider(heard);
            await Opening.RunAsync(server.Services, options);
            await server.StartAsync();
            using HttpClient browser = new()
            {
                BaseAddress = new Uri(
                    server.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single()
                ),
            };
            ShareHouse house = new(server.Services, await FirstVet.SetUpAsync(server.Services));
            Guid trainer = await house.PersonAsync("Trainer Alder", Role.Trainer);
            Guid horse = await house.HorseAsync("Silent Grey", null, trainer);
            string living = (await house.LinkAsync(trainer, HorseRelation.Trainer, null)).Path;
            string secret = living[(ShareAddress.Prefix.Length + 1)..];
            string wrong = AddressSecret.Make().Text;

            string invitation = AddressSecret.Make().Text;
            using HttpResponseMessage uninvited = await browser.GetAsync(InvitationAddress.PathOf(invitation));
            using HttpResponseMessage dead = await browser.GetAsync($"{ShareAddress.PathOf(wrong)}/yard");
            using HttpResponseMessage seen = await browser.GetAsync($"{living}/concern/{horse}");
            using HttpResponseMessage logged = await browser.PostAsync(
                $"{living}/yard/{horse}/checked-none",
                new FormUrlEncodedContent(
                    new Dictionary<string, string>
                    {
                        ["__RequestVerificationToken"] = await RunningApp.TokenAsync(browser, living),
                        ["command"] = Guid.NewGuid().ToString(),
                        ["date"] = "2026-01-01",
                    }
                )
            );
            await server.StopAsync();

            Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.OK), (dead.StatusCode, seen.StatusCode));
            Assert.EndsWith("/yard", logged.RequestMessage!.RequestUri!.AbsolutePath, StringComparison.Ordinal);
            Assert.DoesNotContain(heard.Lines, line => line.Contains(wrong, StringComparison.Ordinal));
            Assert.Contains(heard.Lines, line => line.StartsWith("RequestPath:/s ", StringComparison.Ordinal));
            Assert.DoesNotContain(heard.Lines, line => line.Contains(secret, StringComparison.Ordinal));
            Assert.Equal(HttpStatusCode.NotFound, uninvited.StatusCode);
            Assert.DoesNotContain(heard.Lines, line => line.Contains(invitation, StringComparison.Ordinal));
        }

        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }
}
