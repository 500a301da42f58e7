using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Sqlite;

namespace RehabTrack.Records.Tests.Sqlite;

public sealed class SharedModelTests
{
    /// <summary>A model that is made ahead and then made once more would only cost.</summary>
    [Fact]
    public async Task The_model_that_is_made_ahead_is_the_one_that_the_server_uses()
    {
        SqliteRecordsServices.MakeModel();
        await using ServiceProvider server = new ServiceCollection()
            .AddLogging()
            .AddMemoryCache()
            .AddSqliteRecords(Path.GetTempPath())
            .BuildServiceProvider();
        await using RecordsContext used = await server.GetRequiredService<IDbContextFactory<RecordsContext>>().CreateDbContextAsync();
        await using RecordsContext ahead = new RecordsDesignFactory().CreateDbContext([]);

        Assert.Same(ahead.Model, used.Model);
    }
}
