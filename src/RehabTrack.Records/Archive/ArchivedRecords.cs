using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Archive;

/// <summary>Brings records back that were put away.</summary>
internal static class ArchivedRecords
{
    /// <summary>The horse of what shall come back was put away, too: nobody would see it.</summary>
    public static Problem HorseFirst { get; } = new("horse", "bring-back-horse-first");

    /// <summary>The case of what shall come back was put away, too.</summary>
    public static Problem CaseFirst { get; } = new("case", "bring-back-case-first");

    /// <summary>Lets a record count again that was put away, as it was read.</summary>
    /// <param name="session">Who asks.</param>
    /// <param name="records">Where to look.</param>
    /// <param name="input">Which, and the version that was read.</param>
    /// <param name="field">What names it in a problem.</param>
    /// <param name="prepare">Changes it on the way, or says what keeps it away; nothing said lets it come.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task<Outcome<Saved>> BringBackAsync<TRecord>(
        RecordsSession session,
        IQueryable<TRecord> records,
        RecordInput input,
        string field,
        Func<TRecord, Task<IReadOnlyList<Problem>>> prepare,
        CancellationToken cancellation
    )
        where TRecord : KeptRecord
    {
        TRecord? record = await records.FirstOrDefaultAsync(one => one.Id == input.Id && one.ArchivedAt != null, cancellation);
        if (record is null)
        {
            return RecordProblems.NotFound(field);
        }

        if (record.Version != input.Version)
        {
            return RecordProblems.ChangedMeanwhile;
        }

        IReadOnlyList<Problem> kept = await prepare(record);
        if (kept.Count > 0)
        {
            return Outcome<Saved>.Failed(kept);
        }

        record.ArchivedAt = null;
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(record.Id, record.Version);
    }

    /// <summary>Whether a horse counts.</summary>
    public static Task<bool> IsHereAsync(RecordsContext records, Guid horseId, CancellationToken cancellation) =>
        records.Horses.AnyAsync(horse => horse.Id == horseId && horse.ArchivedAt == null, cancellation);
}
