using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Sqlite.Backups;
using RehabTrack.Wording;

namespace RehabTrack.Web.Commands;

/// <summary>
/// <c>verify --data FOLDER</c>, <c>verify --backup BACKUP.zip</c>, or both: reads everything and says what is wrong; with both it also
/// tells where they differ.
/// </summary>
public static class VerifyCommand
{
    /// <summary>Runs the command.</summary>
    /// <param name="words">What follows <c>verify</c>.</param>
    /// <param name="messages">Takes what a person is told.</param>
    /// <param name="cancellation">Interrupts it.</param>
    /// <returns>One of <see cref="ExitCodes"/>.</returns>
    public static async Task<int> RunAsync(IReadOnlyList<string> words, TextWriter messages, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(messages);
        if (OptionWords.Read(words, ["--data", "--backup"], BackupTexts.UseVerify, out string message) is not { } options)
        {
            await messages.WriteLineAsync(message);
            return ExitCodes.Refused;
        }

        if (options.Count == 0)
        {
            await messages.WriteLineAsync(BackupTexts.UseVerify);
            return ExitCodes.Refused;
        }

        try
        {
            CheckReport? backup = options.TryGetValue("--backup", out string? file)
                ? await RecordsCheck.BackupAsync(file, cancellation)
                : null;
            CheckReport? folder = options.TryGetValue("--data", out string? data)
                ? await RecordsCheck.FolderAsync(data, backup, cancellation)
                : null;
            IReadOnlyList<Problem> differing =
                backup is { Problems.Count: 0 } && folder is { Problems.Count: 0 }
                    ? await RecordsCheck.DifferingAsync(file!, data!, cancellation)
                    : [];
            return Report(messages, backup, folder, differing);
        }
        catch (OperationCanceledException)
        {
            await messages.WriteLineAsync(BackupTexts.Interrupted);
            return ExitCodes.Interrupted;
        }
        catch (Exception broken) when (broken is IOException or UnauthorizedAccessException)
        {
            await messages.WriteLineAsync(string.Format(TextCulture.Default, AnalyseTexts.FileTrouble, broken.Message));
            return ExitCodes.Refused;
        }
    }

    private static int Report(TextWriter messages, CheckReport? backup, CheckReport? folder, IReadOnlyList<Problem> differing)
    {
        List<Problem> wrong = [];
        foreach (CheckReport report in new[] { backup, folder }.OfType<CheckReport>())
        {
            if (report.Migration is { } migration)
            {
                messages.WriteLine(
                    string.Format(
                        TextCulture.Default,
                        BackupTexts.Checked,
                        report.Place,
                        report.Tables.Count,
                        report.RowsRead,
                        report.FilesRead,
                        migration
                    )
                );
            }

            if (report.WasOlder)
            {
                messages.WriteLine(BackupTexts.CheckedOlder);
            }

            wrong.AddRange(report.Problems);
        }

        if (backup is { Problems.Count: 0 } && folder is { Problems.Count: 0 })
        {
            Compare(messages, backup, folder);
            wrong.AddRange(RecordsCheck.Lost(backup, folder));
            wrong.AddRange(differing);
        }

        BackupCommand.Told(messages, wrong);
        messages.WriteLine(wrong.Count == 0 ? BackupTexts.Sound : string.Format(TextCulture.Default, BackupTexts.Unsound, wrong.Count));
        return wrong.Count == 0 ? ExitCodes.Done : ExitCodes.Unsound;
    }

    private static void Compare(TextWriter messages, CheckReport backup, CheckReport folder)
    {
        string[] differing =
        [
            .. backup
                .Tables.Keys.Union(folder.Tables.Keys, StringComparer.Ordinal)
                .Where(table => backup.Tables.GetValueOrDefault(table) != folder.Tables.GetValueOrDefault(table))
                .Order(StringComparer.Ordinal),
        ];
        foreach (string table in differing)
        {
            messages.WriteLine(
                string.Format(
                    TextCulture.Default,
                    BackupTexts.TableDiffers,
                    table,
                    backup.Tables.GetValueOrDefault(table),
                    folder.Tables.GetValueOrDefault(table)
                )
            );
        }

        if (differing.Length == 0)
        {
            messages.WriteLine(BackupTexts.TablesSame);
        }
    }
}
