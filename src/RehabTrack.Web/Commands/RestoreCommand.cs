using System.Globalization;
using RehabTrack.Records.Room;
using RehabTrack.Records.Sqlite.Backups;
using RehabTrack.Wording;

namespace RehabTrack.Web.Commands;

/// <summary><c>restore --from BACKUP.zip --data FOLDER</c>: everything of a backup into an empty folder, or nothing.</summary>
public static class RestoreCommand
{
    /// <summary>Runs the command.</summary>
    /// <param name="words">What follows <c>restore</c>.</param>
    /// <param name="messages">Takes what a person is told.</param>
    /// <param name="cancellation">Interrupts it.</param>
    /// <returns>One of <see cref="ExitCodes"/>.</returns>
    public static async Task<int> RunAsync(IReadOnlyList<string> words, TextWriter messages, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(messages);
        if (OptionWords.Read(words, ["--from", "--data"], BackupTexts.UseRestore, out string message) is not { } options)
        {
            await messages.WriteLineAsync(message);
            return ExitCodes.Refused;
        }

        if (!options.TryGetValue("--from", out string? from) || !options.TryGetValue("--data", out string? data))
        {
            await messages.WriteLineAsync(BackupTexts.UseRestore);
            return ExitCodes.Refused;
        }

        try
        {
            Outcome<BackupManifest> restored = await BackupRestore.RunAsync(from, data, cancellation);
            BackupCommand.Told(messages, restored.Problems);
            if (restored.Succeeded)
            {
                string made = restored.Value.MadeAt.ToString("yyyy-MM-dd HH:mm:ss 'UTC'", CultureInfo.InvariantCulture);
                await messages.WriteLineAsync(
                    string.Format(TextCulture.Default, BackupTexts.Restored, Path.GetFullPath(data), made, restored.Value.Program)
                );
            }

            return restored.Succeeded ? ExitCodes.Done : ExitCodes.Refused;
        }
        catch (OperationCanceledException)
        {
            await messages.WriteLineAsync(BackupTexts.Interrupted);
            return ExitCodes.Interrupted;
        }
    }
}
