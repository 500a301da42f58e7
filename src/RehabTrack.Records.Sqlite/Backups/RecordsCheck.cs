using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Sqlite.Backups;

/// <summary>
/// Reads everything of a data folder or a backup: what the database finds wrong with itself, the checksums, also of each file that is kept as
/// a row, every row of every table with what is written in it as JSON, and whether it is as the trail told of it last. Nothing is written; a database of an older version is read in a migrated copy.
/// </summary>
public static class RecordsCheck
{
    private const int MostTold = 100;

    private static readonly Dictionary<Guid, TrailAnchor> NothingNoted = [];

    /// <summary>Reads a data folder; the program may be at work in it.</summary>
    /// <param name="dataFolder">The folder.</param>
    /// <param name="since">What was found in an earlier backup of it: its trails must go on from there; null when there is none.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task<CheckReport> FolderAsync(string dataFolder, CheckReport? since, CancellationToken cancellation)
    {
        DataFolder data = new(dataFolder);
        // The lines of an older version are chained when it is migrated, in each copy with salts of its own.
        IReadOnlyDictionary<Guid, TrailAnchor> noted = since is { WasOlder: false } ? since.TrailEnds : NothingNoted;
        return File.Exists(data.Database)
            ? await DatabaseAsync(data.Path, data.Database, noted, cancellation)
            : new CheckReport { Place = data.Path, Problems = [BackupProblems.NoData(data.Path)] };
    }

    /// <summary>Reads a backup.</summary>
    /// <param name="backup">The file.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task<CheckReport> BackupAsync(string backup, CancellationToken cancellation)
    {
        string path = Path.GetFullPath(backup);
        using BackupArchive archive = BackupArchive.Open(path);
        if (archive.Problems.Count > 0)
        {
            return new CheckReport { Place = path, Problems = archive.Problems };
        }

        DirectoryInfo unpacked = Directory.CreateTempSubdirectory("rehabtrack-");
        try
        {
            List<Problem> wrong = await archive.ExtractAsync(unpacked.FullName, cancellation);
            CheckReport read =
                wrong.Count > 0
                    ? new CheckReport { Place = path, Problems = wrong }
                    : await DatabaseAsync(path, Path.Combine(unpacked.FullName, DataFolder.DatabaseName), NothingNoted, cancellation);
            return read with
            {
                FilesRead = archive.Manifest.Files.Count,
                Problems = [.. read.Problems, .. Miscounted(archive.Manifest.Tables, read)],
            };
        }
        finally
        {
            unpacked.Delete(recursive: true);
        }
    }

    /// <summary>
    /// Which rows of a folder say something else than those of a backup, though they were not written since. Only databases of one version
    /// can be held against each other: of others nothing is told.
    /// </summary>
    /// <param name="backup">The file, which was found to be sound.</param>
    /// <param name="dataFolder">The folder; the program may be at work in it.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task<IReadOnlyList<Problem>> DifferingAsync(string backup, string dataFolder, CancellationToken cancellation)
    {
        using BackupArchive archive = BackupArchive.Open(Path.GetFullPath(backup));
        DirectoryInfo unpacked = Directory.CreateTempSubdirectory("rehabtrack-");
        try
        {
            if (await archive.ExtractAsync(unpacked.FullName, cancellation) is { Count: > 0 } wrong)
            {
                return wrong;
            }

            string kept = Path.Combine(unpacked.FullName, DataFolder.DatabaseName);
            await using OpenDatabase present = await OpenDatabase.OpenAsync(new DataFolder(dataFolder).Database, cancellation);
            return await IsOfSameVersionAsync(present, kept, cancellation) ? await present.CompareAsync(kept, cancellation) : [];
        }
        finally
        {
            unpacked.Delete(recursive: true);
        }
    }

    /// <summary>What a folder has lost since a backup was made: lines of a history only ever grow.</summary>
    /// <param name="backup">What was found in the backup.</param>
    /// <param name="folder">What was found in the folder.</param>
    public static IEnumerable<Problem> Lost(CheckReport backup, CheckReport folder)
    {
        ArgumentNullException.ThrowIfNull(backup);
        ArgumentNullException.ThrowIfNull(folder);
        return AppendOnly
            .AllTables.Select(table =>
                (Table: table, Kept: backup.Tables.GetValueOrDefault(table), Present: folder.Tables.GetValueOrDefault(table))
            )
            .Where(row => row.Present < row.Kept)
            .Select(row => BackupProblems.HistoryShrank(row.Table, row.Kept, row.Present));
    }

    private static async Task<bool> IsOfSameVersionAsync(OpenDatabase present, string kept, CancellationToken cancellation)
    {
        await using OpenDatabase other = await OpenDatabase.OpenAsync(kept, cancellation);
        IReadOnlyList<string> applied = await other.MigrationsAsync(cancellation);
        await using RecordsContext records = other.Records();
        return applied.SequenceEqual(await present.MigrationsAsync(cancellation), StringComparer.Ordinal)
            && applied.ToHashSet(StringComparer.Ordinal).SetEquals(records.Database.GetMigrations());
    }

    private static async Task<CheckReport> DatabaseAsync(
        string place,
        string file,
        IReadOnlyDictionary<Guid, TrailAnchor> noted,
        CancellationToken cancellation
    )
    {
        CheckReport report = new() { Place = place, Problems = [] };
        try
        {
            await using OpenDatabase database = await OpenDatabase.OpenAsync(file, cancellation);
            if (await database.CheckAsync(place, cancellation) is { Count: > 0 } damage)
            {
                return report with { Problems = damage };
            }

            IReadOnlyList<string> applied = await database.MigrationsAsync(cancellation);
            if (applied.Count == 0)
            {
                return report with { Problems = [BackupProblems.NotOurs(place)] };
            }

            report = report with { Migration = applied[^1], Tables = await database.CountAsync(cancellation) };
            await using (RecordsContext records = database.Records())
            {
                if (SqliteStart.Unknown(records, applied) is { } newer)
                {
                    return report with { Problems = [BackupProblems.Newer(place, newer)] };
                }

                report = report with { WasOlder = records.Database.GetMigrations().Except(applied, StringComparer.Ordinal).Any() };
            }

            return report.WasOlder
                ? await MigratedAsync(report, database, cancellation)
                : await RowsAsync(report, database, noted, cancellation);
        }
        catch (SqliteException broken)
        {
            Problem wrong =
                broken.SqliteErrorCode == SQLitePCL.raw.SQLITE_READONLY
                    ? BackupProblems.HalfWritten(place)
                    : BackupProblems.DatabaseDamaged(place, broken.Message);
            return report with { Problems = [.. report.Problems, wrong] };
        }
    }

    private static async Task<CheckReport> MigratedAsync(CheckReport report, OpenDatabase older, CancellationToken cancellation)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("rehabtrack-");
        try
        {
            DataFolder data = new(folder.FullName);
            await older.CopyAsync(data.Database, cancellation);
            DbContextOptionsBuilder<RecordsContext> options = new();
            SqliteRecordsServices.Configure(options, data.ConnectionStringUnpooled);
            await new SqliteStart(new PooledDbContextFactory<RecordsContext>(options.Options), data, TimeProvider.System).RunAsync(
                cancellation
            );
            await using OpenDatabase migrated = await OpenDatabase.OpenAsync(data.Database, cancellation);
            return await RowsAsync(report, migrated, NothingNoted, cancellation);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static async Task<CheckReport> RowsAsync(
        CheckReport report,
        OpenDatabase database,
        IReadOnlyDictionary<Guid, TrailAnchor> noted,
        CancellationToken cancellation
    )
    {
        database.HoldStill();
        IReadOnlyDictionary<string, long> counts = await database.CountAsync(cancellation);
        await using RecordsContext records = database.Records();
        List<Problem> wrong = [];
        long rows = 0;
        await foreach (KeptTable table in KeptRows.ReadAsync(records, cancellation))
        {
            rows += table.Rows;
            wrong.AddRange(table.Unreadable.Select(row => BackupProblems.RowUnreadable(table.Name, row.Id, row.Why)));
            wrong.AddRange(table.Spoiled.Select(id => BackupProblems.FileSpoiled(table.Name, id)));
            if (counts.GetValueOrDefault(table.Name) != table.Rows && table.Unreadable.Count == 0)
            {
                wrong.Add(BackupProblems.CountDiffers(table.Name, counts.GetValueOrDefault(table.Name), table.Rows));
            }
        }

        List<TrailCheck> trails = wrong.Count == 0 ? await TrailsAsync(records, noted, cancellation) : [];
        wrong.AddRange(
            trails.Where(trail => trail.FirstBreak is not null).Select(trail => BackupProblems.TrailBroken(trail, trail.FirstBreak!))
        );
        if (wrong.Count == 0)
        {
            wrong.AddRange(await UnlikeToldAsync(records, cancellation));
        }

        return report with
        {
            Tables = report.WasOlder ? report.Tables : counts,
            RowsRead = rows,
            TrailEnds = trails.Where(trail => trail.End is not null).ToDictionary(trail => trail.PracticeId, trail => trail.End!),
            Problems = [.. report.Problems, .. wrong],
        };
    }

    private static async Task<List<Problem>> UnlikeToldAsync(RecordsContext records, CancellationToken cancellation)
    {
        List<Problem> found = [];
        await foreach (UnlikeTold row in RowsAgainstTrail.FindAsync(records, cancellation))
        {
            found.Add(BackupProblems.RowUnlikeTold(row));
            if (found.Count == MostTold)
            {
                break;
            }
        }

        return found;
    }

    private static async Task<List<TrailCheck>> TrailsAsync(
        RecordsContext records,
        IReadOnlyDictionary<Guid, TrailAnchor> noted,
        CancellationToken cancellation
    )
    {
        List<TrailCheck> trails = [];
        Guid[] practices = await records.Changes.IgnoreQueryFilters().Select(line => line.PracticeId).Distinct().ToArrayAsync(cancellation);
        foreach (Guid practice in practices.Union(noted.Keys).Order())
        {
            TrailAnchor[] last = noted.TryGetValue(practice, out TrailAnchor? end) ? [end] : [];
            trails.Add(await TrailWalk.AlongAsync(records.Enter(practice, null), last, null, cancellation));
        }

        return trails;
    }

    private static IEnumerable<Problem> Miscounted(IReadOnlyDictionary<string, long> said, CheckReport read) =>
        read.Problems.Count > 0
            ? []
            : said.Where(table => read.Tables.GetValueOrDefault(table.Key) != table.Value)
                .Select(table => BackupProblems.CountDiffers(table.Key, table.Value, read.Tables.GetValueOrDefault(table.Key)));
}
