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
            await RefuseNewerAsync(records, cancellation);
            await records.Database.ExecuteSqlRawAsync("DROP TABLE IF EXISTS \"__EFMigrationsLock\"", cancellation);
            await records.Database.MigrateAsync(cancellation);
            await records.Database.ExecuteSqlRawAsync("PRAGMA journal_mode=WAL", cancellation);
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
