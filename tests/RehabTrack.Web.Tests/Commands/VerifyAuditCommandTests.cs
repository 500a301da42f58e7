using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Start;
using RehabTrack.Web.Commands;
using RehabTrack.Web.Tests.Hosting;

namespace RehabTrack.Web.Tests.Commands;

public sealed class VerifyAuditCommandTests : IAsyncLifetime
{
    private const string Other = "00000000000000000000000000000000000000000000000000000000000000aa";
    private readonly string _folder = Directory.CreateTempSubdirectory("rehabtrack-tests-").FullName;
    private readonly StringWriter _notes = new();
    private readonly StringWriter _messages = new();

    public async Task InitializeAsync()
    {
        await using ServiceProvider services = Services();
        await services.GetRequiredService<SqliteStart>().RunAsync();
        Actor vet = await FirstVet.FoundAsync(services);
        foreach (string name in new[] { "Alder", "Birch", "Cedar" })
        {
            Assert.True(
                (
                    await services
                        .GetRequiredService<SaveHorse>()
                        .ExecuteAsync(vet, new SaveHorseInput { CommandId = Guid.NewGuid(), Name = name })
                ).Succeeded
            );
        }
    }

    public Task DisposeAsync()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
        _notes.Dispose();
        _messages.Dispose();
        return Task.CompletedTask;
    }

    [Fact]
    public async Task A_trail_that_fits_ends_with_the_note_of_its_last_line()
    {
        Assert.Equal(VerifyAuditCommand.Fits, await RunAsync());

        Assert.Matches("^[0-9a-f-]{36}/5:[0-9a-f]{64}\n$", _notes.ToString().ReplaceLineEndings("\n"));
        Assert.Contains("Ford Practice: 5 lines checked, all fit.", _messages.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_changed_line_is_named_with_number_time_and_reason()
    {
        Tamper("UPDATE \"Change\" SET \"AfterJson\" = replace(\"AfterJson\", 'Birch', 'Beech') WHERE \"Number\" = 4");

        Assert.Equal(VerifyAuditCommand.Broken, await RunAsync());

        Assert.Empty(_notes.ToString());
        Assert.Contains("3 lines fit. Then: Line 4 of ", _messages.ToString(), StringComparison.Ordinal);
        Assert.Contains(" UTC was changed or put in", _messages.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_end_that_was_cut_off_is_found_by_the_note_alone()
    {
        await RunAsync();
        string note = _notes.ToString().Trim();
        Tamper("DELETE FROM \"Change\" WHERE \"Number\" = 5");

        Assert.Equal(VerifyAuditCommand.Fits, await RunAsync());
        Assert.Equal(VerifyAuditCommand.Broken, await RunAsync("--expect", note));
        Assert.Equal(VerifyAuditCommand.Broken, await RunAsync("--expect", note.Split('/')[1]));
        Assert.Contains("Line 5 is not the one that was noted", _messages.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Notes_of_an_earlier_check_let_the_next_one_begin_behind_them()
    {
        await RunAsync();
        string kept = Path.Combine(_folder, "notes.txt");
        await File.WriteAllTextAsync(kept, $"\n{_notes}");

        Assert.Equal(VerifyAuditCommand.Fits, await RunAsync("--from", kept));
        Assert.Contains("Ford Practice: 0 lines checked, all fit.", _messages.ToString(), StringComparison.Ordinal);
        await File.WriteAllTextAsync(kept, $"5:{Other}");
        Assert.Equal(VerifyAuditCommand.Broken, await RunAsync("--from", kept));
    }

    [Fact]
    public async Task What_cannot_be_followed_is_refused_with_a_sentence()
    {
        Assert.Equal(VerifyAuditCommand.Refused, await RunAsync("--expect", "5"));
        Assert.Equal(VerifyAuditCommand.Refused, await RunAsync("--expect"));
        Assert.Equal(VerifyAuditCommand.Refused, await RunAsync("more"));
        Assert.Equal(VerifyAuditCommand.Refused, await RunAsync("--from", Path.Combine(_folder, "none.txt")));
        Assert.Equal(VerifyAuditCommand.Refused, await RunInAsync("--data", Path.Combine(_folder, "none")));
        Assert.Equal(VerifyAuditCommand.Refused, await RunInAsync());
        Assert.Contains("There is no ", _messages.ToString(), StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(_folder, "none")));
    }

    [Fact]
    public async Task An_interrupted_check_says_so()
    {
        Assert.Equal(
            VerifyAuditCommand.Interrupted,
            await VerifyAuditCommand.RunAsync(["--data", _folder], _notes, _messages, new CancellationToken(canceled: true))
        );
    }

    private Task<int> RunAsync(params string[] words) => RunInAsync(["--data", _folder, .. words]);

    private Task<int> RunInAsync(params string[] words) => VerifyAuditCommand.RunAsync(words, _notes, _messages, default);

    private ServiceProvider Services()
    {
        ServiceCollection services = new();
        services.AddRecords();
        services.AddSqliteRecords(_folder);
        return services.BuildServiceProvider();
    }

    private void Tamper(string statement)
    {
        using SqliteConnection connection = new($"Data Source={Path.Combine(_folder, DataFolder.DatabaseName)}");
        connection.Open();
        foreach (string each in new[] { "DROP TRIGGER \"Change_is_not_updated\"", "DROP TRIGGER \"Change_is_not_deleted\"", statement })
        {
            using SqliteCommand command = connection.CreateCommand();
            command.CommandText = each;
            command.ExecuteNonQuery();
        }
    }
}
