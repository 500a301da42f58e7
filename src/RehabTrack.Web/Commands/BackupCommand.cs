using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Backups;
using RehabTrack.Records.Room;
using RehabTrack.Records.Sqlite.Backups;
using RehabTrack.Wording;

namespace RehabTrack.Web.Commands;

/// <summary><c>backup --data FOLDER --to FOLDER</c>: one file with everything kept, while the program goes on.</summary>
public static class BackupCommand
{
    /// <summary>Runs the command.</summary>
    /// <param name="words">What follows <c>backup</c>.</param>
    /// <param name="messages">Takes what a person is told.</param>
    /// <param name="time">Tells the moment.</param>
    /// <param name="cancellation">Interrupts it.</param>
    /// <returns>One of <see cref="ExitCodes"/>.</returns>
    public static async Task<int> RunAsync(
        IReadOnlyList<string> words,
        TextWriter messages,
        TimeProvider time,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(messages);
        if (OptionWords.Read(words, ["--data", "--to"], BackupTexts.UseBackup, out string message) is not { } options)
        {
            await messages.WriteLineAsync(message);
            return ExitCodes.Refused;
        }

        if (!options.TryGetValue("--data", out string? data) || !options.TryGetValue("--to", out string? to))
        {
            await messages.WriteLineAsync(BackupTexts.UseBackup);
            return ExitCodes.Refused;
        }

        try
        {
            Outcome<BackupCopy> made = await BackupWriter.WriteAsync(data, to, byHand: true, time, cancellation);
            Told(messages, made.Problems);
            if (made.Succeeded)
            {
                string file = Path.Combine(Path.GetFullPath(to), made.Value.Name);
                await messages.WriteLineAsync(string.Format(TextCulture.Default, BackupTexts.Made, file, made.Value.Length));
            }

            return made.Succeeded ? ExitCodes.Done : ExitCodes.Refused;
        }
        catch (OperationCanceledException)
        {
            await messages.WriteLineAsync(BackupTexts.Interrupted);
            return ExitCodes.Interrupted;
        }
    }

    internal static void Told(TextWriter messages, IEnumerable<Problem> problems)
    {
        foreach (Problem problem in problems)
        {
            messages.WriteLine(ProblemSentences.Of(problem));
        }
    }
}
