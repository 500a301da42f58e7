using System.Globalization;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Sqlite.Backups;

/// <summary>
/// A database opened to be read and nothing else, at one moment: what is written meanwhile is not seen. Nothing is pooled, so that the
/// file is free again afterwards.
/// </summary>
internal sealed class OpenDatabase : IAsyncDisposable
{
    private const int BusySeconds = 30;
    private const int MostTold = 20;
    private readonly SqliteConnection connection;
    private SqliteTransaction? moment;

    private OpenDatabase(SqliteConnection connection)
    {
        this.connection = connection;
    }

    public static async Task<OpenDatabase> OpenAsync(string file, CancellationToken cancellation)
    {
        SqliteConnection opened = new(
            new SqliteConnectionStringBuilder
            {
                DataSource = file,
                Mode = SqliteOpenMode.ReadOnly,
                DefaultTimeout = BusySeconds,
                Pooling = false,
            }.ToString()
        );
        try
        {
            await opened.OpenAsync(cancellation);
            return new OpenDatabase(opened);
        }
        catch
        {
            await opened.DisposeAsync();
            throw;
        }
    }

    /// <summary>From here on every question is answered as of this moment.</summary>
    public void HoldStill() => moment = connection.BeginTransaction(deferred: true);

    /// <summary>The tables as the program's model sees them, of every practice at once.</summary>
    public RecordsContext Records()
    {
        DbContextOptionsBuilder<RecordsContext> options = new();
        SqliteRecordsServices.Configure(options, connection);
        RecordsContext records = new(options.Options);
        records.Database.UseTransaction(moment);
        return records;
    }

    /// <summary>Writes all of it, as it is now, into a new file; others write on meanwhile.</summary>
    public Task CopyAsync(string file, CancellationToken cancellation) => RunAsync("VACUUM INTO $file", file, cancellation);

    /// <summary>The migrations that made it, oldest first; none when it is not a database of this program.</summary>
    public async Task<IReadOnlyList<string>> MigrationsAsync(CancellationToken cancellation) =>
        await AskAsync("""SELECT name FROM sqlite_master WHERE name = '__EFMigrationsHistory'""", cancellation) is []
            ? []
            : await AskAsync("""SELECT "MigrationId" FROM "__EFMigrationsHistory" ORDER BY "MigrationId" """, cancellation);

    /// <summary>Rows by table, of every table there is.</summary>
    public async Task<IReadOnlyDictionary<string, long>> CountAsync(CancellationToken cancellation)
    {
        SortedDictionary<string, long> counts = new(StringComparer.Ordinal);
        foreach (
            string table in await AskAsync(
                """SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite\_%' ESCAPE '\' AND name <> '__EFMigrationsLock'""",
                cancellation
            )
        )
        {
            string count = (
                await AskAsync($"SELECT COUNT(*) FROM \"{table.Replace("\"", "\"\"", StringComparison.Ordinal)}\"", cancellation)
            )[0];
            counts.Add(table, long.Parse(count, CultureInfo.InvariantCulture));
        }

        return counts;
    }

    /// <summary>What the database itself finds wrong: pages, indexes, and rows that point at nothing.</summary>
    /// <param name="name">How the database is called in what is told.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<List<Problem>> CheckAsync(string name, CancellationToken cancellation)
    {
        List<Problem> found = [];
        try
        {
            string limit = MostTold.ToString(CultureInfo.InvariantCulture);
            foreach (string line in await AskAsync($"PRAGMA integrity_check({limit})", cancellation))
            {
                if (line != "ok")
                {
                    found.Add(BackupProblems.DatabaseDamaged(name, line));
                }
            }

            foreach (
                string line in await AskAsync(
                    $"""SELECT "table" || ' ' || COALESCE("rowid", '') || ' -> ' || "parent" FROM pragma_foreign_key_check LIMIT {limit}""",
                    cancellation
                )
            )
            {
                found.Add(BackupProblems.DatabaseDamaged(name, line));
            }
        }
        catch (SqliteException broken) when (SqliteTrouble.IsDamage(broken))
        {
            found.Add(BackupProblems.DatabaseDamaged(name, broken.Message));
        }

        return found;
    }

    /// <summary>Which rows are others than in a backup's database of the same version, though they were not written since; some of each table.</summary>
    /// <param name="backup">The backup's database.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<List<Problem>> CompareAsync(string backup, CancellationToken cancellation)
    {
        await RunAsync("ATTACH DATABASE $file AS kept", backup, cancellation);
        await using RecordsContext records = Records();
        List<Problem> found = [];
        foreach ((string table, string question) in BackupComparison.Questions(records.Model))
        {
            found.AddRange(
                (await AskAsync($"{question} LIMIT {MostTold.ToString(CultureInfo.InvariantCulture)}", cancellation)).Select(id =>
                    BackupProblems.RowUnlikeBackup(table, id)
                )
            );
        }

        return found;
    }

    public async ValueTask DisposeAsync()
    {
        if (moment is not null)
        {
            await moment.DisposeAsync();
        }

        await connection.DisposeAsync();
    }

    private async Task<List<string>> AskAsync(string question, CancellationToken cancellation)
    {
        await using SqliteCommand command = Command(question);
        await using SqliteDataReader reader = await command.ExecuteReaderAsync(cancellation);
        List<string> answers = [];
        while (await reader.ReadAsync(cancellation))
        {
            answers.Add(await reader.IsDBNullAsync(0, cancellation) ? "" : reader.GetString(0));
        }

        return answers;
    }

    private async Task RunAsync(string statement, string file, CancellationToken cancellation)
    {
        await using SqliteCommand command = Command(statement);
        command.Parameters.AddWithValue("$file", file);
        await command.ExecuteNonQueryAsync(cancellation);
    }

    private SqliteCommand Command(string text)
    {
        SqliteCommand command = connection.CreateCommand();
        command.CommandText = text;
        // A large database takes its time; whoever waits can give up.
        command.CommandTimeout = 0;
        command.Transaction = moment;
        return command;
    }
}
