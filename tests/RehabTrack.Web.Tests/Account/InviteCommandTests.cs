using RehabTrack.Records.Rights;
using RehabTrack.Web.Commands;
using RehabTrack.Web.Hosting;
using static RehabTrack.Web.Tests.Account.NewServer;

namespace RehabTrack.Web.Tests.Account;

/// <summary>The way back in for who has lost password and telephone and has the data folder in hand.</summary>
public sealed class InviteCommandTests : IAsyncLifetime
{
    private readonly NewServer _server = new();

    public Task InitializeAsync() => _server.InitializeAsync();

    public Task DisposeAsync() => _server.DisposeAsync();

    [Fact]
    public async Task It_prints_a_path_with_which_the_last_administrator_comes_in_again()
    {
        await _server.SetUpAsync();
        (int code, string path, _) = await RunAsync("--data", Folder, "--name", "IDA@example.org");
        using HttpClient browser = _server.Browser();

        Assert.Equal(ExitCodes.Done, code);
        Assert.Equal("/sign-in/second-step", (await SendAsync(browser, path.Trim(), "invited", Choice("ida@example.org"))).To);
        await SecondStepAsync(browser, "/");
    }

    [Fact]
    public async Task A_name_that_nobody_has_and_words_that_are_missing_are_refused_with_a_sentence()
    {
        await _server.SetUpAsync();
        await _server.AddAsync(await _server.FirstAsync(), "Tess Lunge", Role.Trainer);

        Assert.Equal((ExitCodes.Refused, ""), Short(await RunAsync("--data", Folder, "--name", "tess")));
        Assert.Contains("tess", (await RunAsync("--data", Folder, "--name", "tess")).Said, StringComparison.Ordinal);
        Assert.Equal((ExitCodes.Refused, ""), Short(await RunAsync("--data", Folder)));
        Assert.Contains("invite --data", (await RunAsync("--data", Folder)).Said, StringComparison.Ordinal);
        Assert.Equal((ExitCodes.Refused, ""), Short(await RunAsync("--data", Path.Combine(Folder, "no"), "--name", "ida@example.org")));
    }

    private string Folder => ((AppMode)_server.Services.GetService(typeof(AppMode))!).DataFolder;

    private static (int, string) Short((int Code, string Path, string Said) run) => (run.Code, run.Path);

    private static async Task<(int Code, string Path, string Said)> RunAsync(params string[] words)
    {
        await using StringWriter path = new();
        await using StringWriter messages = new();
        int code = await InviteCommand.RunAsync(words, path, messages, default);
        return (code, path.ToString(), messages.ToString());
    }
}
