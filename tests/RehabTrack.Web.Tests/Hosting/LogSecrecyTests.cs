using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Feeds;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Components;
using RehabTrack.Web.Features.Board;
using RehabTrack.Web.Hosting;
using RehabTrack.Web.Shared.Links;
using RehabTrack.Web.Tests.Shared;

namespace RehabTrack.Web.Tests.Hosting;

public sealed class LogSecrecyTests
{
    [Fact]
    public async Task No_line_of_the_log_holds_a_secret_a_name_or_what_was_said_of_a_horse()
    {
        string folder = Directory.CreateTempSubdirectory("rehabtrack-secrecy-").FullName;
        using HeardLogs heard = new();
        StartOptions options = StartOptions.Parse(["--data", folder, "--urls", "http://127.0.0.1:0", "--Logging:LogLevel:Default=Trace"]);
        List<string> secrets = ["Alder", "Quiet Grey", "internal of the examination", "warm over the tendon"];
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
            Actor vet = await FirstVet.SetUpAsync(server.Services);
            ShareHouse house = new(server.Services, vet);
            Guid person = await house.PersonAsync("Tom Alder", Role.Trainer);
            Guid horse = await house.HorseAsync("Quiet Grey", null, person);
            await house.SignedCaseAsync(horse);
            string living = (await house.LinkAsync(person, HorseRelation.Trainer, null)).Path;
            AddressSecret calendar = AddressSecret.Make();
            await house.AskAsync<RenewFeed, RenewFeedInput, Saved>(new RenewFeedInput(Guid.NewGuid(), calendar.Hash));
            secrets.AddRange([living[(ShareAddress.Prefix.Length + 1)..], calendar.Text]);
            await server
                .Services.GetRequiredService<ReportConcern>()
                .ExecuteAsync(
                    new Actor(vet.PracticeId, person, Role.Trainer, "Tom Alder"),
                    new ReportConcernInput(Guid.NewGuid(), horse, "warm over the tendon")
                );
            using HttpResponseMessage seen = await browser.GetAsync(living);
            using HttpResponseMessage feed = await browser.GetAsync(CalendarFiles.FeedPath(calendar));
            using HttpResponseMessage asked = await browser.GetAsync("/horses?query=Quiet%20Grey");
            Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), (seen.StatusCode, feed.StatusCode));
            await BreakAsync(folder);
            using HttpResponseMessage broken = await browser.GetAsync(living);
            using HttpResponseMessage brokenFeed = await browser.GetAsync(CalendarFiles.FeedPath(calendar));
            Assert.Equal(HttpStatusCode.InternalServerError, brokenFeed.StatusCode);
            await server.StopAsync();
            Assert.Contains(heard.Lines, line => line.Contains("Fault ", StringComparison.Ordinal));
            Assert.All(secrets, secret => Assert.DoesNotContain(heard.Lines, line => line.Contains(secret, StringComparison.Ordinal)));
        }

        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>Takes a table away that the pages need.</summary>
    private static async Task BreakAsync(string folder)
    {
        await using SqliteConnection records = new($"Data Source={Path.Combine(folder, "rehabtrack.db")}");
        await records.OpenAsync();
        await using SqliteCommand drop = records.CreateCommand();
        drop.CommandText = "PRAGMA foreign_keys=OFF; ALTER TABLE \"Practice\" RENAME TO \"Gone\"";
        await drop.ExecuteNonQueryAsync();
    }
}
