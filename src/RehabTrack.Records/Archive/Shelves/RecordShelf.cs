using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Archive.Shelves;

/// <summary>A shelf of records that are brought back one by one.</summary>
/// <param name="kind">The kind.</param>
/// <param name="putAwayBy">The command that puts it away.</param>
internal abstract class RecordShelf<TRecord>(ArchivedKind kind, string putAwayBy) : ArchiveShelf(kind, putAwayBy)
    where TRecord : KeptRecord
{
    /// <summary>All of them.</summary>
    protected abstract IQueryable<TRecord> Records { get; }

    public sealed override Task<int> CountAsync(CancellationToken cancellation) => Records.CountAsync(cancellation);

    public sealed override async Task<IReadOnlyList<ArchivedThing>> PageAsync(int skipped, int taken, CancellationToken cancellation) =>
        await ShowAsync(
            await Records
                .AsNoTracking()
                .OrderByDescending(record => record.ArchivedAt)
                .ThenByDescending(record => record.Id)
                .Skip(skipped)
                .Take(taken)
                .ToArrayAsync(cancellation),
            cancellation
        );

    /// <summary>What is to be seen of them, in their order.</summary>
    protected abstract Task<IReadOnlyList<ArchivedThing>> ShowAsync(TRecord[] page, CancellationToken cancellation);
}
