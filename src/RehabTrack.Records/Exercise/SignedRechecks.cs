using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>
/// Reads which recheck the signatures of horses ask for. Only signatures are read, few as they are beside the logs, and only of horses
/// that have any, so that lists of many horses stay quick.
/// </summary>
internal static class SignedRechecks
{
    /// <summary>Of every horse with an open case and something signed that asks for a recheck.</summary>
    public static async Task<IReadOnlyDictionary<Guid, SignedRecheck>> OfPracticeAsync(
        RecordsSession session,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        Guid[] horses = await records
            .Horses.Where(horse =>
                horse.ArchivedAt == null
                && records.ExerciseEntries.Any(entry => entry.HorseId == horse.Id && entry.Number == 1)
                && records.Cases.Any(injury => injury.HorseId == horse.Id && injury.ClosedAt == null && injury.ArchivedAt == null)
            )
            .Select(horse => horse.Id)
            .ToArrayAsync(cancellation);
        return await OfHorsesAsync(session, horses, cancellation);
    }

    /// <summary>Of some horses; those for which nothing signed asks for a recheck are left out.</summary>
    public static async Task<IReadOnlyDictionary<Guid, SignedRecheck>> OfHorsesAsync(
        RecordsSession session,
        Guid[] horseIds,
        CancellationToken cancellation
    )
    {
        if (horseIds.Length == 0)
        {
            return new Dictionary<Guid, SignedRecheck>();
        }

        ILookup<Guid, ExerciseEntryRecord> signatures = (
            await ExerciseRows
                .Signatures(session.Records)
                .Where(entry => horseIds.Contains(entry.HorseId))
                .OrderBy(entry => entry.Number)
                .ToListAsync(cancellation)
        ).ToLookup(entry => entry.HorseId);
        Guid[] signed = [.. signatures.Select(ofHorse => ofHorse.Key)];
        return (await ExerciseRows.HistoriesAsync(session, signed, signatures, cancellation))
            .Select(history => (Horse: history.Key, Recheck: PermitReader.RecheckOn(history.Value, session.Today)))
            .Where(ofHorse => ofHorse.Recheck != SignedRecheck.None)
            .ToDictionary(ofHorse => ofHorse.Horse, ofHorse => ofHorse.Recheck);
    }

    /// <summary>Of a horse whose history was read: by its signatures, and by its cases and examinations.</summary>
    public static SignedRecheck Of(PermitHistory history, DateOnly today) =>
        PermitReader.RecheckOn(
            new PermitHistory([
                .. history.Entries.Where(entry => entry is PlanSigned or DecisionSigned or CaseOpened or CaseClosed or ExaminationSigned),
            ]),
            today
        );

    /// <summary>Of one horse.</summary>
    public static async Task<SignedRecheck> OfHorseAsync(RecordsSession session, Guid horseId, CancellationToken cancellation) =>
        (await OfHorsesAsync(session, [horseId], cancellation)).GetValueOrDefault(horseId, SignedRecheck.None);
}
