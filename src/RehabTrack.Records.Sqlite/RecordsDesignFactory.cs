using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Sqlite;

/// <summary>The model without anybody's database: for <c>dotnet ef</c>, and for what makes it ahead.</summary>
internal sealed class RecordsDesignFactory : IDesignTimeDbContextFactory<RecordsContext>
{
    public RecordsContext CreateDbContext(string[] args)
    {
        DbContextOptionsBuilder<RecordsContext> options = new();
        SqliteRecordsServices.Configure(options, "Data Source=:memory:");
        return new RecordsContext(options.Options);
    }
}
