using RehabTrack.Records.Accounts;
using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Start;
using RehabTrack.Web.Account;
using RehabTrack.Web.Components;
using RehabTrack.Wording;

namespace RehabTrack.Web.Commands;

/// <summary>
/// <c>invite --data FOLDER --name SIGN-IN-NAME</c>: lets somebody choose a password again where nobody can invite them any more. Whoever has the
/// data folder in hand has everything anyway. The path of the invitation goes to standard output, sentences to standard error.
/// </summary>
public static class InviteCommand
{
    /// <summary>Runs the command.</summary>
    /// <param name="words">What follows <c>invite</c>.</param>
    /// <param name="path">Takes the path of the invitation.</param>
    /// <param name="messages">Takes what a person is told.</param>
    /// <param name="cancellation">Interrupts it.</param>
    /// <returns>One of <see cref="ExitCodes"/>.</returns>
    public static async Task<int> RunAsync(
        IReadOnlyList<string> words,
        TextWriter path,
        TextWriter messages,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(messages);
        if (OptionWords.Read(words, ["--data", "--name"], StartUpTexts.UseInvite, out string message) is not { } options)
        {
            await messages.WriteLineAsync(message);
            return ExitCodes.Refused;
        }

        if (!options.TryGetValue("--data", out string? folder) || !options.TryGetValue("--name", out string? name))
        {
            await messages.WriteLineAsync(StartUpTexts.UseInvite);
            return ExitCodes.Refused;
        }

        ServiceCollection services = new();
        services.AddRecords();
        services.AddSqliteRecords(folder);
        await using ServiceProvider provider = services.BuildServiceProvider();
        try
        {
            await provider.GetRequiredService<SqliteStart>().LookAsync(cancellation);
            AddressSecret secret = AddressSecret.Make();
            if (!await provider.GetRequiredService<InvitationDoor>().MakeAsync(name, secret.Hash, cancellation))
            {
                await messages.WriteLineAsync(string.Format(TextCulture.Default, StartUpTexts.InviteNobody, name));
                return ExitCodes.Refused;
            }

            await path.WriteLineAsync(InvitationAddress.PathOf(secret.Text));
            await messages.WriteLineAsync(string.Format(TextCulture.Default, StartUpTexts.Invited, name));
            return ExitCodes.Done;
        }
        catch (StartException refused)
        {
            await messages.WriteLineAsync(refused.Message);
            return ExitCodes.Refused;
        }
    }
}
