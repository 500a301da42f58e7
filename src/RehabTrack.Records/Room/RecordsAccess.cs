using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Room;

/// <summary>The way to the database, which only use cases and the steps of starting up can take.</summary>
public sealed class RecordsAccess
{
    private readonly IDbContextFactory<RecordsContext> factory;

    private readonly IStoreTrouble? trouble;

    internal RecordsAccess(IDbContextFactory<RecordsContext> factory, TimeProvider time, IStoreTrouble? trouble = null)
    {
        this.factory = factory;
        this.trouble = trouble;
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

    /// <summary>What a person can mend when the database cannot write; null for a bug.</summary>
    internal Problem? TroubleOf(Exception broken) => trouble?.Of(broken);

    /// <summary>The same database at another time: how the demo lives through its past.</summary>
    internal RecordsAccess At(TimeProvider time) => new(factory, time, trouble);
}
