using System.Net;
using System.Text.RegularExpressions;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using RehabTrack.Records.Sqlite;
using RehabTrack.Web.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Hosting;

/// <summary>When something breaks that must not: a server of its own for each, since it is broken afterwards.</summary>
public sealed partial class FaultTests : IAsyncLifetime
{
    private readonly RunningApp _app = new();

    public Task InitializeAsync() => _app.InitializeAsync();

    public Task DisposeAsync() => _app.DisposeAsync();

    [Fact]
    public async Task A_person_is_told_a_number_and_nothing_else_and_the_log_tells_the_rest_under_it()
    {
        using HeardLogs heard = new();
        _app.Services.GetRequiredService<ILoggerFactory>().AddProvider(heard);
        using HttpClient browser = await _app.BrowserAsync(_app.Vet);
        await ChangeAsync("PRAGMA foreign_keys=OFF; ALTER TABLE \"Practice\" RENAME TO \"Gone\"");

        using HttpResponseMessage answer = await browser.GetAsync("/account");
        string page = await answer.Content.ReadAsStringAsync();

        Assert.Equal(HttpStatusCode.InternalServerError, answer.StatusCode);
        Assert.Contains(ShellTexts.ErrorTitle, WebUtility.HtmlDecode(page), StringComparison.Ordinal);
        Assert.DoesNotContain("Sqlite", page, StringComparison.OrdinalIgnoreCase);
        string number = Number().Match(page).Groups["number"].Value;
        string told = Assert.Single(heard.Lines, line => line.StartsWith($"Fault {number} ", StringComparison.Ordinal));
        Assert.Contains("no such table", told, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_database_that_a_newer_version_took_over_is_not_ready_while_the_program_lives()
    {
        using HttpClient browser = _app.Browser();
        Assert.Equal("ready", await browser.GetStringAsync(Health.Ready));
        await ChangeAsync("INSERT INTO \"__EFMigrationsHistory\" VALUES ('99990101000000_Later', '99.0.0')");

        using HttpResponseMessage ready = await browser.GetAsync(Health.Ready);

        Assert.Equal((HttpStatusCode.ServiceUnavailable, "not ready"), (ready.StatusCode, await ready.Content.ReadAsStringAsync()));
        Assert.Equal("live", await browser.GetStringAsync(Health.Live));
    }

    private async Task ChangeAsync(string statement)
    {
        await using SqliteConnection records = new(
            $"Data Source={Path.Combine(_app.Services.GetRequiredService<DataFolder>().Path, "rehabtrack.db")}"
        );
        await records.OpenAsync();
        await using SqliteCommand change = records.CreateCommand();
        change.CommandText = statement;
        await change.ExecuteNonQueryAsync();
    }

    [GeneratedRegex("<code>(?<number>[0-9a-f]{32})</code>", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Number();
}
