using Microsoft.EntityFrameworkCore.Storage;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.History;

/// <summary>Writes one note of access in a transaction of its own.</summary>
internal static class AccessNote
{
    /// <summary>Writes it; whoever writes is the context's writer from then on.</summary>
    public static async Task WriteAsync(
        RecordsContext records,
        Writer writer,
        AccessEvent what,
        Guid? recordId,
        string? detail,
        CancellationToken cancellation
    )
    {
        records.Enter(records.PracticeId, writer);
        await using IDbContextTransaction transaction = await records.Database.BeginTransactionAsync(cancellation);
        records.Changes.Add(AccessLine.Of(records, what, recordId, detail));
        await records.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
    }
}
