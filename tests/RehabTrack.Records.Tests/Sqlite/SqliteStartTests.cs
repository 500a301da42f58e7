using System.Data.Common;
using System.Globalization;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Sqlite;

public sealed class SqliteStartTests
{
    [Fact]
    public async Task The_file_is_opened_so_that_a_commit_outlives_a_power_cut()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();

        (string Journal, string Synchronous, string ForeignKeys) found = await house.LookAsync(async records =>
            (
                await PragmaAsync(records.Database, "journal_mode"),
                await PragmaAsync(records.Database, "synchronous"),
                await PragmaAsync(records.Database, "foreign_keys")
            )
        );

        // 2 is FULL (SQLite documentation, PRAGMA synchronous).
        Assert.Equal(("wal", "2", "1"), found);
    }

    [Fact]
    public async Task The_folder_is_the_owners_alone()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        string parent = Directory.CreateTempSubdirectory("rehabtrack-records-").FullName;
        try
        {
            string folder = Path.Combine(parent, "data");
            await using RecordsHouse house = await RecordsHouse.BuildAsync(folder);

            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(folder));
        }
        finally
        {
            Directory.Delete(parent, recursive: true);
        }
    }

    [Fact]
    public async Task A_database_of_a_newer_version_is_refused_and_left_alone()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await house.LookAsync(records =>
            records.Database.ExecuteSqlRawAsync("""INSERT INTO "__EFMigrationsHistory" VALUES ('20991231000000_FarAhead', '99.0.0')""")
        );

        StartException refused = await Assert.ThrowsAsync<StartException>(() => house.Get<SqliteStart>().RunAsync());

        Assert.Equal((StartTrouble.NewerDatabase, house.Database), (refused.Trouble, refused.Database));
        Assert.Contains("20991231000000_FarAhead", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_is_no_database_is_refused_and_left_alone()
    {
        await using RecordsHouse house = RecordsHouse.Closed();
        byte[] content = [.. Enumerable.Range(0, 8192).Select(at => (byte)(at % 251))];
        await File.WriteAllBytesAsync(house.Database, content);

        StartException refused = await Assert.ThrowsAsync<StartException>(() => house.Get<SqliteStart>().RunAsync());

        Assert.Equal(StartTrouble.NotOurs, refused.Trouble);
        SqliteConnection.ClearAllPools();
        Assert.Equal(content, await File.ReadAllBytesAsync(house.Database));
    }

    [Fact]
    public async Task Two_starts_at_once_end_with_one_schema()
    {
        await using RecordsHouse one = RecordsHouse.Closed(clock: TimeProvider.System);
        await using RecordsHouse other = RecordsHouse.Closed(one.Folder, TimeProvider.System);

        await Task.WhenAll(Task.Run(() => one.Get<SqliteStart>().RunAsync()), Task.Run(() => other.Get<SqliteStart>().RunAsync()));

        Assert.Equal(
            await other.LookAsync(records => Task.FromResult(records.Database.GetMigrations()), practiceId: Guid.NewGuid()),
            await one.LookAsync(records => records.Database.GetAppliedMigrationsAsync(), practiceId: Guid.NewGuid())
        );
    }

    [Fact]
    public void The_migrations_tell_the_whole_model()
    {
        using Records.Keeping.RecordsContext records = new RecordsDesignFactory().CreateDbContext([]);

        Assert.False(records.Database.HasPendingModelChanges());
    }

    private static async Task<string> PragmaAsync(DatabaseFacade database, string name)
    {
        await database.OpenConnectionAsync();
        await using DbCommand command = database.GetDbConnection().CreateCommand();
        command.CommandText = "PRAGMA " + name;
        return Convert.ToString(await command.ExecuteScalarAsync(), CultureInfo.InvariantCulture)!;
    }
}
