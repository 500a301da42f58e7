using System.IO.Compression;
using System.Reflection;
using Microsoft.Data.Sqlite;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Backups;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Sqlite.Backups;

/// <summary>
/// Writes a backup of a data folder while others write into it: one file with everything kept, checked before it gets its name. What
/// is under way has another name, so a half one is never taken for a backup.
/// </summary>
public static class BackupWriter
{
    private const string LockName = "backup.lock";
    private const string Unfinished = ".unfinished-";
    private static readonly string[] DatabaseFiles =
    [
        DataFolder.DatabaseName,
        $"{DataFolder.DatabaseName}-wal",
        $"{DataFolder.DatabaseName}-shm",
        $"{DataFolder.DatabaseName}-journal",
    ];

    /// <summary>Writes one.</summary>
    /// <param name="dataFolder">The data folder.</param>
    /// <param name="target">The folder that backups go to; it is made when it is not there.</param>
    /// <param name="byHand">Whether a person asked for it: such a backup is never cleared away.</param>
    /// <param name="time">Tells the moment.</param>
    /// <param name="cancellation">Gives up; nothing is left behind.</param>
    /// <returns>The backup, or what must be mended.</returns>
    public static async Task<Outcome<BackupCopy>> WriteAsync(
        string dataFolder,
        string target,
        bool byHand,
        TimeProvider time,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(time);
        DataFolder data = new(dataFolder);
        string folder = Path.TrimEndingDirectorySeparator(Path.GetFullPath(target));
        if (!File.Exists(data.Database))
        {
            return BackupProblems.NoData(data.Path);
        }

        if (folder == Path.TrimEndingDirectorySeparator(data.Path))
        {
            return BackupProblems.SameFolder(folder);
        }

        try
        {
            DataFolder.CreateOwned(folder);
            using FileStream? only = Lock(folder);
            if (only is null)
            {
                return BackupProblems.Busy(folder);
            }

            ClearUnfinished(folder);
            try
            {
                return await WriteAsync(data, folder, byHand, time, cancellation);
            }
            finally
            {
                ClearUnfinished(folder);
            }
        }
        catch (Exception broken) when (broken is IOException or UnauthorizedAccessException)
        {
            return BackupProblems.NotWritten(folder, broken.Message);
        }
        catch (SqliteException broken)
        {
            return SqliteTrouble.IsDamage(broken)
                ? BackupProblems.DatabaseDamaged(data.Database, broken.Message)
                : BackupProblems.NotWritten(folder, broken.Message);
        }
    }

    private static async Task<Outcome<BackupCopy>> WriteAsync(
        DataFolder data,
        string folder,
        bool byHand,
        TimeProvider time,
        CancellationToken cancellation
    )
    {
        string copy = Path.Combine(folder, $"{Unfinished}{DataFolder.DatabaseName}");
        await using (OpenDatabase live = await OpenDatabase.OpenAsync(data.Database, cancellation))
        {
            if (await live.MigrationsAsync(cancellation) is [])
            {
                return BackupProblems.NoData(data.Path);
            }

            await live.CopyAsync(copy, cancellation);
        }

        DateTime now = time.GetUtcNow().UtcDateTime;
        BackupManifest manifest;
        await using (OpenDatabase copied = await OpenDatabase.OpenAsync(copy, cancellation))
        {
            if (await copied.CheckAsync(data.Database, cancellation) is { Count: > 0 } damage)
            {
                return damage;
            }

            manifest = new BackupManifest
            {
                Format = BackupManifest.PresentFormat,
                Program = ProgramVersion,
                Migration = (await copied.MigrationsAsync(cancellation))[^1],
                MadeAt = now,
                Tables = await copied.CountAsync(cancellation),
                Files = [],
            };
        }

        string packed = Path.Combine(folder, $"{Unfinished}packed");
        await PackAsync(data, folder, copy, packed, manifest, cancellation);
        using (BackupArchive written = BackupArchive.Open(packed))
        {
            List<Problem> wrong = [.. written.Problems, .. await written.CheckAsync(cancellation)];
            if (wrong.Count > 0)
            {
                return wrong;
            }
        }

        (string path, DateTime at) = Free(folder, now, byHand);
        Durable.Name(packed, path);
        return new BackupCopy(Path.GetFileName(path), at, new FileInfo(path).Length, byHand);
    }

    private static async Task PackAsync(
        DataFolder data,
        string folder,
        string copy,
        string packed,
        BackupManifest manifest,
        CancellationToken cancellation
    )
    {
        await using FileStream file = Durable.Create(packed);
        using (ZipArchive zip = new(file, ZipArchiveMode.Create, leaveOpen: true))
        {
            List<BackupFile> files = [await AddAsync(zip, copy, DataFolder.DatabaseName, manifest.MadeAt, cancellation)];
            foreach (string other in OtherFiles(data, folder))
            {
                string name = Path.GetRelativePath(data.Path, other).Replace(Path.DirectorySeparatorChar, '/');
                files.Add(await AddAsync(zip, other, name, manifest.MadeAt, cancellation));
            }

            await using Stream entry = Entry(zip, BackupManifest.Name, manifest.MadeAt).Open();
            await entry.WriteAsync((manifest with { Files = files }).Write(), cancellation);
        }

        file.Flush(flushToDisk: true);
    }

    private static async Task<BackupFile> AddAsync(ZipArchive zip, string from, string name, DateTime at, CancellationToken cancellation)
    {
        await using FileStream source = new(from, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        await using Stream entry = Entry(zip, name, at).Open();
        (long length, string sha256) = await HashedCopy.RunAsync(source, entry, long.MaxValue, cancellation);
        return new BackupFile(name, length, sha256);
    }

    private static ZipArchiveEntry Entry(ZipArchive zip, string name, DateTime at)
    {
        ZipArchiveEntry entry = zip.CreateEntry(name, CompressionLevel.Fastest);
        entry.LastWriteTime = new DateTimeOffset(at, TimeSpan.Zero);
        return entry;
    }

    /// <summary>Every other file of the data folder that is worth keeping: not logs, not locks, not what is being written, no links.</summary>
    private static IEnumerable<string> OtherFiles(DataFolder data, string target)
    {
        string logs = Path.Combine(data.Path, "logs");
        EnumerationOptions all = new() { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.ReparsePoint };
        return Directory
            .EnumerateFiles(data.Path, "*", all)
            .Where(file =>
                !IsUnder(file, logs)
                && !IsUnder(file, target)
                && Path.GetExtension(file) is not (".lock" or ".tmp")
                && !DatabaseFiles.Any(name => file == Path.Combine(data.Path, name))
            )
            .Order(StringComparer.Ordinal);
    }

    private static bool IsUnder(string file, string folder) =>
        file.StartsWith(folder + Path.DirectorySeparatorChar, StringComparison.Ordinal);

    private static FileStream? Lock(string folder)
    {
        try
        {
            return new FileStream(Path.Combine(folder, LockName), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException) when (File.Exists(Path.Combine(folder, LockName)))
        {
            return null;
        }
    }

    private static void ClearUnfinished(string folder)
    {
        foreach (string left in Directory.GetFiles(folder, $"{Unfinished}*"))
        {
            File.Delete(left);
        }
    }

    // Two in one second get names of their own.
    private static (string Path, DateTime At) Free(string folder, DateTime now, bool byHand)
    {
        for (DateTime at = now; ; at = at.AddSeconds(1))
        {
            string name = BackupName.Of(at, byHand);
            if (!File.Exists(Path.Combine(folder, name)))
            {
                return (Path.Combine(folder, name), BackupName.Read(name)!.Value.At);
            }
        }
    }

    private static string ProgramVersion =>
        typeof(BackupWriter).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "";
}
