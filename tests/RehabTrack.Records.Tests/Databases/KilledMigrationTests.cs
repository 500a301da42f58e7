using System.Data.Common;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.EntityFrameworkCore.Infrastructure;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Sqlite.Backups;

namespace RehabTrack.Records.Tests.Databases;

/// <summary>A start that is killed while it migrates leaves what the next one completes.</summary>
public sealed class KilledMigrationTests : IDisposable
{
    /// <summary>Of so many statements one is the last before the kill; while a table is rebuilt, every one is.</summary>
    private const int Stride = 9;

    private readonly string _parent = Directory.CreateTempSubdirectory("rehabtrack-migrations-").FullName;

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(_parent, recursive: true);
    }

    [Theory]
    [MemberData(nameof(KeptDatabaseTests.Names), MemberType = typeof(KeptDatabaseTests))]
    public async Task The_files_as_they_lay_at_a_kill_are_migrated_by_the_next_start_and_lose_no_row(string name)
    {
        string folder = Laid(name);
        CheckReport before = await RecordsCheck.FolderAsync(folder, null, default);
        Images images = new(folder, Path.Combine(_parent, "images"));
        await StartAsync(folder, images);
        Assert.NotEmpty(images.Folders);

        foreach (string image in images.Folders)
        {
            await StartAsync(image);
            CheckReport after = await RecordsCheck.FolderAsync(image, null, default);
            Assert.Empty(after.Problems);
            Assert.False(after.WasOlder);
            Assert.All(
                before.Tables.Where(table => table.Key != "__EFMigrationsHistory"),
                table => Assert.True(after.Tables[table.Key] >= table.Value, table.Key)
            );
        }
    }

    [Fact]
    public async Task A_write_that_was_cut_off_before_there_was_a_log_is_undone_by_the_next_start()
    {
        string folder = Laid("issue-a");
        string cut = Path.Combine(_parent, "cut");
        Directory.CreateDirectory(cut);
        await using (SqliteConnection writing = new($"Data Source={Path.Combine(folder, DataFolder.DatabaseName)};Pooling=False"))
        {
            await writing.OpenAsync();
            await using SqliteCommand command = writing.CreateCommand();
            // With hardly any memory the pages go into the file before the commit, and what they were into the journal beside it.
            command.CommandText = """
                PRAGMA cache_size=1;
                BEGIN;
                CREATE TABLE "Filler" ("Content" BLOB);
                INSERT INTO "Filler" VALUES (randomblob(3000000));
                """;
            await command.ExecuteNonQueryAsync();
            foreach (string file in Directory.EnumerateFiles(folder))
            {
                File.Copy(file, Path.Combine(cut, Path.GetFileName(file)));
            }
        }

        Assert.True(File.Exists(Path.Combine(cut, $"{DataFolder.DatabaseName}-journal")));
        Assert.Equal("database-half-written", Assert.Single((await RecordsCheck.FolderAsync(cut, null, default)).Problems).Code);
        await StartAsync(cut);

        CheckReport report = await RecordsCheck.FolderAsync(cut, null, default);
        Assert.Empty(report.Problems);
        Assert.DoesNotContain("Filler", report.Tables.Keys);
    }

    /// <summary>The framework waits for ever where it finds its lock; the start would end by its time.</summary>
    [Fact]
    public async Task The_lock_of_a_migration_that_was_killed_is_taken_away()
    {
        string folder = Laid("issue-a");
        await using (SqliteConnection writing = new($"Data Source={Path.Combine(folder, DataFolder.DatabaseName)};Pooling=False"))
        {
            await writing.OpenAsync();
            await using SqliteCommand command = writing.CreateCommand();
            command.CommandText = """
                CREATE TABLE IF NOT EXISTS "__EFMigrationsLock" ("Id" INTEGER NOT NULL PRIMARY KEY, "Timestamp" TEXT NOT NULL);
                INSERT OR REPLACE INTO "__EFMigrationsLock" VALUES (1, '2026-11-24 08:00:00');
                """;
            await command.ExecuteNonQueryAsync();
        }

        await StartAsync(folder, atMost: TimeSpan.FromSeconds(60));

        CheckReport report = await RecordsCheck.FolderAsync(folder, null, default);
        Assert.Empty(report.Problems);
        Assert.False(report.WasOlder);
    }

    [Theory]
    [MemberData(nameof(KeptDatabaseTests.Names), MemberType = typeof(KeptDatabaseTests))]
    public async Task A_second_start_changes_nothing(string name)
    {
        string folder = Laid(name);
        await StartAsync(folder);
        CheckReport once = await RecordsCheck.FolderAsync(folder, null, default);
        await StartAsync(folder);
        CheckReport twice = await RecordsCheck.FolderAsync(folder, null, default);

        Assert.Empty(twice.Problems);
        Assert.Equal(once.Migration, twice.Migration);
        Assert.Equal(once.Tables, twice.Tables);
    }

    [Theory]
    [MemberData(nameof(KeptDatabaseTests.Names), MemberType = typeof(KeptDatabaseTests))]
    public async Task Verify_reads_an_older_database_in_a_migrated_copy_and_leaves_it_as_it_is(string name)
    {
        string folder = Laid(name);
        byte[] content = await File.ReadAllBytesAsync(Path.Combine(folder, DataFolder.DatabaseName));

        CheckReport report = await RecordsCheck.FolderAsync(folder, null, default);

        Assert.Empty(report.Problems);
        Assert.True(report.RowsRead > 10);
        Assert.Equal(content, await File.ReadAllBytesAsync(Path.Combine(folder, DataFolder.DatabaseName)));
    }

    private string Laid(string name)
    {
        string folder = Path.Combine(_parent, name);
        Directory.CreateDirectory(folder);
        File.Copy(KeptDatabaseTests.FileOf(name), Path.Combine(folder, DataFolder.DatabaseName));
        return folder;
    }

    private static async Task StartAsync(string folder, IInterceptor? watcher = null, TimeSpan? atMost = null)
    {
        DataFolder data = new(folder);
        DbContextOptionsBuilder<RecordsContext> options = new();
        SqliteRecordsServices.Configure(options, data.ConnectionStringUnpooled);
        if (watcher is not null)
        {
            options.AddInterceptors(watcher);
        }

        PooledDbContextFactory<RecordsContext> factory = new(options.Options);
        await new SqliteStart(factory, data, TimeProvider.System).RunAsync(
            new CancellationTokenSource(atMost ?? TimeSpan.FromMinutes(2)).Token
        );
    }

    /// <summary>Copies the files of the database before a statement runs: what a kill at that moment would leave on the disk.</summary>
    private sealed class Images(string folder, string into) : DbCommandInterceptor
    {
        private int seen;

        public List<string> Folders { get; } = [];

        public override ValueTask<InterceptionResult<int>> NonQueryExecutingAsync(
            DbCommand command,
            CommandEventData eventData,
            InterceptionResult<int> result,
            CancellationToken cancellationToken = default
        )
        {
            bool isRebuilding =
                command.CommandText.Contains("ef_temp_", StringComparison.Ordinal)
                || command.CommandText.Contains("foreign_keys", StringComparison.Ordinal);
            if (seen++ % Stride == 0 || isRebuilding)
            {
                string image = Path.Combine(into, seen.ToString(System.Globalization.CultureInfo.InvariantCulture));
                Directory.CreateDirectory(image);
                foreach (string file in Directory.EnumerateFiles(folder, $"{DataFolder.DatabaseName}*"))
                {
                    // The memory that running programs share is not on the disk.
                    if (!file.EndsWith("-shm", StringComparison.Ordinal))
                    {
                        File.Copy(file, Path.Combine(image, Path.GetFileName(file)));
                    }
                }

                Folders.Add(image);
            }

            return ValueTask.FromResult(result);
        }
    }
}
