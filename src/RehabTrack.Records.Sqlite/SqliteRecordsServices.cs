using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.Extensions.Caching.Memory;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using RehabTrack.Records.Backups;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;
using RehabTrack.Records.Sqlite.Backups;

namespace RehabTrack.Records.Sqlite;

/// <summary>Registers the database: one SQLite file in the data folder.</summary>
public static class SqliteRecordsServices
{
    private static readonly DurabilityInterceptor Durability = new();

    /// <summary>Models and compiled questions of all contexts; the size is that which the framework gives a cache of its own.</summary>
    private static readonly MemoryCache Models = new(new MemoryCacheOptions { SizeLimit = 10_240 });

    /// <summary>Adds the database; call <see cref="SqliteStart.RunAsync"/> before anything is asked of it.</summary>
    /// <param name="services">The services.</param>
    /// <param name="dataFolder">Where it is kept.</param>
    public static IServiceCollection AddSqliteRecords(this IServiceCollection services, string dataFolder)
    {
        ArgumentNullException.ThrowIfNull(services);
        DataFolder folder = new(dataFolder);
        services.AddSingleton(folder);
        services.AddPooledDbContextFactory<RecordsContext>(options => Configure(options, folder.ConnectionString));
        services.AddSingleton(provider => new SqliteStart(
            provider.GetRequiredService<IDbContextFactory<RecordsContext>>(),
            folder,
            provider.GetService<TimeProvider>() ?? TimeProvider.System
        ));
        services.AddSingleton<IStoreTrouble, SqliteTrouble>();
        services.TryAddSingleton(new BackupSettings());
        services.AddSingleton<IBackupKeeper>(provider => new BackupKeeper(
            folder,
            provider.GetRequiredService<BackupSettings>(),
            provider.GetRequiredService<IDbContextFactory<RecordsContext>>(),
            provider.GetService<TimeProvider>() ?? TimeProvider.System
        ));
        return services;
    }

    /// <summary>
    /// Makes the model of the records, which all that reads and writes them shares. It is the longest part of a start, and needs nothing of the
    /// rest.
    /// </summary>
    public static void MakeModel()
    {
        using RecordsContext records = new RecordsDesignFactory().CreateDbContext([]);
        _ = records.Model;
    }

    internal static void Configure(DbContextOptionsBuilder options, string connectionString)
    {
        options.UseSqlite(connectionString, ChooseMigrations);
        Configure(options);
    }

    /// <summary>The same on a connection that is open already.</summary>
    internal static void Configure(DbContextOptionsBuilder options, DbConnection connection)
    {
        options.UseSqlite(connection, ChooseMigrations);
        Configure(options);
    }

    private static void ChooseMigrations(SqliteDbContextOptionsBuilder sqlite) =>
        sqlite.MigrationsAssembly(typeof(SqliteRecordsServices).Assembly.GetName().Name);

    private static void Configure(DbContextOptionsBuilder options)
    {
        options.AddInterceptors(Durability);
        options.UseMemoryCache(Models);
        // A migration that rebuilds a table stands alone, so that one that was stopped is done again at the next start.
        options.ConfigureWarnings(warnings => warnings.Ignore(RelationalEventId.NonTransactionalMigrationOperationWarning));
        RecordsOptions.AddTo(options);
    }
}
