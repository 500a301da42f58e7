using RehabTrack.Web.Commands;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Tests.Commands;

public sealed class DataCommandsTests : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("rehabtrack-commands-").FullName;
    private readonly StringWriter _messages = new();

    private string Data => Path.Combine(_folder, "data");

    private string Copies => Path.Combine(_folder, "copies");

    private string Restored => Path.Combine(_folder, "restored");

    public async Task InitializeAsync()
    {
        StartOptions options = StartOptions.Parse(["--data", Data, "--urls", "http://127.0.0.1:0"]);
        await using Microsoft.AspNetCore.Builder.WebApplication app = WebHost.Build(options);
        await Opening.RunAsync(app.Services, options);
    }

    public Task DisposeAsync()
    {
        _messages.Dispose();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
        return Task.CompletedTask;
    }

    [Fact]
    public async Task Backup_restore_and_verify_go_hand_in_hand()
    {
        Assert.Equal(ExitCodes.Done, await BackupAsync("--data", Data, "--to", Copies));
        string backup = Directory.GetFiles(Copies, "*.zip").Single();
        Assert.Contains(backup, Told(), StringComparison.Ordinal);
        Assert.Equal(ExitCodes.Done, await RestoreAsync("--from", backup, "--data", Restored));
        Assert.Contains($"Start the program with --data {Restored}", Told(), StringComparison.Ordinal);

        Assert.Equal(ExitCodes.Done, await VerifyAsync("--data", Restored, "--backup", backup));

        Assert.Contains("the same number of rows in every table", Told(), StringComparison.Ordinal);
        Assert.Contains("nothing is wrong", Told(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Verify_ends_with_one_when_something_is_wrong_and_restore_with_two()
    {
        await BackupAsync("--data", Data, "--to", Copies);
        string backup = Directory.GetFiles(Copies, "*.zip").Single();
        await File.WriteAllBytesAsync(backup, (await File.ReadAllBytesAsync(backup))[..^40]);

        Assert.Equal(ExitCodes.Unsound, await VerifyAsync("--backup", backup));
        Assert.Equal(ExitCodes.Refused, await RestoreAsync("--from", backup, "--data", Restored));
        Assert.False(Directory.Exists(Restored));
        Assert.Contains("is not a backup of this program", Told(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("--data")]
    [InlineData("--data a --data b")]
    [InlineData("--data a --fast")]
    [InlineData("a b")]
    public async Task A_command_line_that_cannot_be_followed_ends_with_two_and_the_usage(string words)
    {
        string[] parts = words.Split(' ', StringSplitOptions.RemoveEmptyEntries);

        Assert.Equal(ExitCodes.Refused, await BackupAsync(parts));
        Assert.Equal(ExitCodes.Refused, await RestoreAsync(parts));
        Assert.Equal(ExitCodes.Refused, await VerifyAsync(parts));
        Assert.Equal(3, Told().Split("Use: ").Length - 1);
    }

    [Fact]
    public async Task An_interrupt_leaves_nothing_behind()
    {
        using CancellationTokenSource interrupted = new();
        await interrupted.CancelAsync();

        Assert.Equal(
            ExitCodes.Interrupted,
            await BackupCommand.RunAsync(["--data", Data, "--to", Copies], _messages, TimeProvider.System, interrupted.Token)
        );
        Assert.Equal(["backup.lock"], Directory.GetFiles(Copies).Select(Path.GetFileName));
    }

    private Task<int> BackupAsync(params string[] words) => BackupCommand.RunAsync(words, _messages, TimeProvider.System, default);

    private Task<int> RestoreAsync(params string[] words) => RestoreCommand.RunAsync(words, _messages, default);

    private Task<int> VerifyAsync(params string[] words) => VerifyCommand.RunAsync(words, _messages, default);

    private string Told() => _messages.ToString();
}
