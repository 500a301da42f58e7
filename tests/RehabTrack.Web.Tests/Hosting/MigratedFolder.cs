using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Start;

namespace RehabTrack.Web.Tests.Hosting;

/// <summary>An empty database of today's schema, migrated once for all tests: each begins with a copy of it.</summary>
internal static class MigratedFolder
{
    private static readonly Lazy<Task<byte[]>> Empty = new(MigrateAsync);

    /// <summary>Puts a copy into a folder that has no database yet.</summary>
    public static async Task FillAsync(string folder) =>
        await File.WriteAllBytesAsync(Path.Combine(folder, DataFolder.DatabaseName), await Empty.Value);

    private static async Task<byte[]> MigrateAsync()
    {
        string folder = Directory.CreateTempSubdirectory("rehabtrack-empty-").FullName;
        ServiceCollection services = new();
        services.AddRecords();
        services.AddSqliteRecords(folder);
        await using (ServiceProvider provider = services.BuildServiceProvider())
        {
            await provider.GetRequiredService<SqliteStart>().RunAsync();
        }

        SqliteConnection.ClearAllPools();
        byte[] database = await File.ReadAllBytesAsync(Path.Combine(folder, DataFolder.DatabaseName));
        Directory.Delete(folder, recursive: true);
        return database;
    }
}
