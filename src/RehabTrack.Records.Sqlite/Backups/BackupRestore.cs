using Microsoft.Data.Sqlite;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Sqlite.Backups;

/// <summary>
/// Puts a backup into an empty folder. Everything is unpacked beside it and checked first; only then does it get the folder's name, so
/// that nothing is ever half restored.
/// </summary>
public static class BackupRestore
{
    /// <summary>Restores.</summary>
    /// <param name="backup">The backup.</param>
    /// <param name="dataFolder">The folder: not there, or empty.</param>
    /// <param name="cancellation">Gives up; nothing is left behind.</param>
    /// <returns>What the backup says of itself, or what must be mended.</returns>
    public static async Task<Outcome<BackupManifest>> RunAsync(string backup, string dataFolder, CancellationToken cancellation)
    {
        string folder = Path.TrimEndingDirectorySeparator(Path.GetFullPath(dataFolder));
        if (File.Exists(folder) || (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any()))
        {
            return BackupProblems.FolderNotEmpty(folder);
        }

        string beside = $"{folder}.restoring-{Path.GetRandomFileName()}";
        try
        {
            using BackupArchive archive = BackupArchive.Open(Path.GetFullPath(backup));
            if (archive.Problems.Count > 0)
            {
                return archive.Problems.ToList();
            }

            DataFolder.CreateOwned(beside);
            List<Problem> wrong = await archive.ExtractAsync(beside, cancellation);
            if (wrong.Count == 0)
            {
                wrong = await CheckAsync(backup, Path.Combine(beside, DataFolder.DatabaseName), cancellation);
            }

            if (wrong.Count > 0)
            {
                return wrong;
            }

            if (Directory.Exists(folder))
            {
                Directory.Delete(folder);
            }

            Directory.Move(beside, folder);
            Durable.FlushFolder(Path.GetDirectoryName(folder)!);
            return archive.Manifest;
        }
        catch (Exception broken) when (broken is IOException or UnauthorizedAccessException)
        {
            return BackupProblems.NotWritten(folder, broken.Message);
        }
        catch (SqliteException broken)
        {
            return BackupProblems.DatabaseDamaged(backup, broken.Message);
        }
        finally
        {
            if (Directory.Exists(beside))
            {
                Directory.Delete(beside, recursive: true);
            }
        }
    }

    private static async Task<List<Problem>> CheckAsync(string backup, string database, CancellationToken cancellation)
    {
        await using OpenDatabase unpacked = await OpenDatabase.OpenAsync(database, cancellation);
        List<Problem> wrong = await unpacked.CheckAsync(backup, cancellation);
        if (wrong.Count > 0)
        {
            return wrong;
        }

        IReadOnlyList<string> applied = await unpacked.MigrationsAsync(cancellation);
        await using RecordsContext records = unpacked.Records();
        return applied.Count == 0 ? [BackupProblems.NotOurs(backup)]
            : SqliteStart.Unknown(records, applied) is { } newer ? [BackupProblems.Newer(backup, newer)]
            : [];
    }
}
