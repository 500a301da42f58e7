using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Sqlite;

/// <summary>How <c>dotnet ef</c> sees the model; it opens no database of anybody's.</summary>
internal sealed class RecordsDesignFactory : IDesignTimeDbContextFactory<RecordsContext>
{
    public RecordsContext CreateDbContext(string[] args)
    {
        DbContextOptionsBuilder<RecordsContext> options = new();
        SqliteRecordsServices.Configure(options, "Data Source=:memory:");
        return new RecordsContext(options.Options);
    }
}
