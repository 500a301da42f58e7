using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Room;

/// <summary>The way to the database, which only use cases and the steps of starting up can take.</summary>
public sealed class RecordsAccess
{
    private readonly IDbContextFactory<RecordsContext> factory;

    internal RecordsAccess(IDbContextFactory<RecordsContext> factory, TimeProvider time)
    {
        this.factory = factory;
        Time = time;
    }

    internal TimeProvider Time { get; }

    internal DateTime Now => Time.GetUtcNow().UtcDateTime;

    /// <summary>Opens the database for one piece of work: one connection from the first question to the last.</summary>
    internal async Task<RecordsContext> OpenAsync(Guid practiceId, Writer? writer, CancellationToken cancellation)
    {
        RecordsContext records = await factory.CreateDbContextAsync(cancellation);
        await records.Database.OpenConnectionAsync(cancellation);
        return records.Enter(practiceId, writer);
    }

    /// <summary>The same database at another time: how the demo lives through its past.</summary>
    internal RecordsAccess At(TimeProvider time) => new(factory, time);
}
