using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Sqlite;

/// <summary>Registers the database: one SQLite file in the data folder.</summary>
public static class SqliteRecordsServices
{
    private static readonly DurabilityInterceptor Durability = new();

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
        return services;
    }

    internal static void Configure(DbContextOptionsBuilder options, string connectionString)
    {
        options.UseSqlite(connectionString, sqlite => sqlite.MigrationsAssembly(typeof(SqliteRecordsServices).Assembly.GetName().Name));
        options.AddInterceptors(Durability);
        // A migration that rebuilds a table stands alone, so that one that was stopped is done again at the next start.
        options.ConfigureWarnings(warnings => warnings.Ignore(RelationalEventId.NonTransactionalMigrationOperationWarning));
        RecordsOptions.AddTo(options);
    }
}
