using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Sqlite.Trails;

namespace RehabTrack.Records.Sqlite;

/// <summary>
/// Makes the database ready: the folder, the file, its write-ahead log, the migrations. One start at a time works on a folder; so a
/// migration lock that is found then was left by one that was killed, and is taken away.
/// </summary>
public sealed class SqliteStart
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(200);
    private readonly IDbContextFactory<RecordsContext> factory;
    private readonly DataFolder folder;
    private readonly TimeProvider time;

    internal SqliteStart(IDbContextFactory<RecordsContext> factory, DataFolder folder, TimeProvider time)
    {
        this.factory = factory;
        this.folder = folder;
        this.time = time;
    }

    /// <summary>Makes the database ready. Again and again is no harm.</summary>
    /// <exception cref="StartException">It cannot be used.</exception>
    public async Task RunAsync(CancellationToken cancellation = default)
    {
        folder.Create();
        await using FileStream only = await OnlyStartAsync(cancellation);
        try
        {
            await using RecordsContext records = await factory.CreateDbContextAsync(cancellation);
            await UndoHalfWrittenAsync(records, cancellation);
            await RefuseNewerAsync(records, cancellation);
            // The log comes first: a migration that is killed is then undone by whoever opens the database next, also to read only.
            await records.Database.ExecuteSqlRawAsync("PRAGMA journal_mode=WAL", cancellation);
            // Asked to migrate, the framework first holds the whole model against the last migration, which is a good part of a start.
            if ((await records.Database.GetPendingMigrationsAsync(cancellation)).Any())
            {
                await records.Database.ExecuteSqlRawAsync("DROP TABLE IF EXISTS \"__EFMigrationsLock\"", cancellation);
                await DropHalfRebuiltAsync(records, cancellation);
                await records.Database.MigrateAsync(cancellation);
            }

            await OldLines.ChainAsync(records, cancellation);
            await KeepHistoryAsync(records, cancellation);
        }
        catch (SqliteException broken) when (SqliteTrouble.IsDamage(broken))
        {
            throw NotOurs(broken);
        }
    }

    /// <summary>The latest migration that this version does not know: a newer one wrote it; null when it knows them all.</summary>
    internal static string? Unknown(RecordsContext records, IEnumerable<string> applied) =>
        applied.Except(records.Database.GetMigrations(), StringComparer.Ordinal).LastOrDefault();

    /// <summary>Sees whether the database can be read as it is, and changes nothing: what a command needs that only looks.</summary>
    /// <exception cref="StartException">It cannot be read as it is.</exception>
    public async Task LookAsync(CancellationToken cancellation = default)
    {
        if (!File.Exists(folder.Database))
        {
            throw new StartException(
                StartTrouble.NoDatabase,
                folder.Database,
                $"There is no {folder.Database}. Name the data folder that the program prints when it starts."
            );
        }

        try
        {
            await using RecordsContext records = await factory.CreateDbContextAsync(cancellation);
            await RefuseNewerAsync(records, cancellation);
            if ((await records.Database.GetPendingMigrationsAsync(cancellation)).Any())
            {
                throw new StartException(
                    StartTrouble.OlderDatabase,
                    folder.Database,
                    $"{folder.Database} was written by an older version of this program. Start this version on it once, then ask again."
                );
            }
        }
        catch (SqliteException broken) when (SqliteTrouble.IsDamage(broken))
        {
            throw NotOurs(broken);
        }
    }

    /// <summary>Whether records can be kept now: the database answers and is of this version, and the data folder can be written.</summary>
    public async Task<bool> IsReadyAsync(CancellationToken cancellation = default)
    {
        try
        {
            await LookAsync(cancellation);
            await using FileStream probe = new(
                Path.Combine(folder.Path, Path.GetRandomFileName()),
                FileMode.CreateNew,
                FileAccess.Write,
                FileShare.None,
                1,
                FileOptions.DeleteOnClose
            );
            probe.WriteByte(1);
            await probe.FlushAsync(cancellation);
            return true;
        }
        catch (Exception broken) when (broken is StartException or SqliteException or IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private StartException NotOurs(SqliteException broken) =>
        new(
            StartTrouble.NotOurs,
            folder.Database,
            $"{folder.Database} is not a database of this program, or is damaged. Restore it from a backup, or name another data folder.",
            broken
        );

    private static async Task KeepHistoryAsync(RecordsContext records, CancellationToken cancellation)
    {
        await using IDbContextTransaction transaction = await records.Database.BeginTransactionAsync(cancellation);
        foreach (string statement in AppendOnly.Statements)
        {
            await records.Database.ExecuteSqlRawAsync(statement, cancellation);
        }

        await transaction.CommitAsync(cancellation);
    }

    /// <summary>
    /// A write that was killed before there was a log is undone by the first who reads and may write. What asks for the migrations opens
    /// the database to read only, and would fail on it for ever.
    /// </summary>
    private async Task UndoHalfWrittenAsync(RecordsContext records, CancellationToken cancellation)
    {
        if (File.Exists(folder.Database))
        {
            await records.Database.ExecuteSqlRawAsync("SELECT COUNT(*) FROM sqlite_master", cancellation);
        }
    }

    /// <summary>
    /// A migration that rebuilds a table fills a new one beside it before it takes the old one's name. One that was killed in between left
    /// the new one; while the old one is there too, it holds nothing of its own, and is made anew.
    /// </summary>
    private static async Task DropHalfRebuiltAsync(RecordsContext records, CancellationToken cancellation)
    {
        List<string> left = await records
            .Database.SqlQueryRaw<string>(
                """
                SELECT "new".name AS "Value" FROM sqlite_master AS "new"
                JOIN sqlite_master AS "old" ON "old".type = 'table' AND "new".name = 'ef_temp_' || "old".name
                WHERE "new".type = 'table'
                """
            )
            .ToListAsync(cancellation);
        foreach (string table in left)
        {
            string drop = $"DROP TABLE \"{table}\"";
            await records.Database.ExecuteSqlRawAsync(drop, cancellation);
        }
    }

    private async Task RefuseNewerAsync(RecordsContext records, CancellationToken cancellation)
    {
        if (Unknown(records, await records.Database.GetAppliedMigrationsAsync(cancellation)) is { } unknown)
        {
            throw new StartException(
                StartTrouble.NewerDatabase,
                folder.Database,
                $"{folder.Database} was written by a newer version of this program ({unknown}). "
                    + "Start that version, or name another data folder. Nothing was changed."
            );
        }
    }

    private async Task<FileStream> OnlyStartAsync(CancellationToken cancellation)
    {
        long began = time.GetTimestamp();
        while (true)
        {
            try
            {
                return new FileStream(folder.Lock, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (time.GetElapsedTime(began) < Patience)
            {
                await Task.Delay(Pause, time, cancellation);
            }
            catch (IOException busy)
            {
                throw new StartException(
                    StartTrouble.StartingElsewhere,
                    folder.Database,
                    $"Another start works on {folder.Path} and does not end. Stop it, or name another data folder.",
                    busy
                );
            }
        }
    }
}
