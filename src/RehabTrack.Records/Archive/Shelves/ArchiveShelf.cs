using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Archive.Shelves;

/// <summary>What was put away of one kind, and can be brought back.</summary>
/// <param name="kind">The kind.</param>
/// <param name="putAwayBy">The command that puts it away, by which the trail tells who did.</param>
internal abstract class ArchiveShelf(ArchivedKind kind, string putAwayBy)
{
    public ArchivedKind Kind { get; } = kind;

    public string PutAwayBy { get; } = putAwayBy;

    /// <summary>One shelf of each kind.</summary>
    /// <param name="session">Who asks.</param>
    /// <param name="horseId">Only what belongs to this horse; null for all.</param>
    public static IReadOnlyList<ArchiveShelf> All(RecordsSession session, Guid? horseId) =>
        [
            new HorseShelf(session, horseId),
            new PersonShelf(session, horseId),
            new CaseShelf(session, horseId),
            new DraftShelf(session, horseId),
            new CareShelf(session, horseId),
            new CoverShelf(session, horseId),
            new RepeatShelf(session, horseId),
        ];

    public abstract Task<int> CountAsync(CancellationToken cancellation);

    /// <summary>Some of them, latest first; who put them away is not told yet.</summary>
    public abstract Task<IReadOnlyList<ArchivedThing>> PageAsync(int skipped, int taken, CancellationToken cancellation);

    protected static Task<Dictionary<Guid, HorseRecord>> HorsesAsync(
        RecordsContext records,
        IEnumerable<Guid> ids,
        CancellationToken cancellation
    )
    {
        Guid[] wanted = [.. ids.Distinct()];
        return records.Horses.AsNoTracking().Where(horse => wanted.Contains(horse.Id)).ToDictionaryAsync(horse => horse.Id, cancellation);
    }

    /// <summary>The horse is to be brought back first, where it was put away, too.</summary>
    protected static ArchivedKind? After(HorseRecord horse) => horse.ArchivedAt is null ? null : ArchivedKind.Horse;
}
