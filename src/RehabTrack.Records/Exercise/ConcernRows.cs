using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Covers;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>Opens concerns, and finds the vets they reach.</summary>
internal static class ConcernRows
{
    public static void Open(RecordsSession session, ExerciseEntryRecord line) =>
        session.Records.Concerns.Add(
            new ConcernRecord
            {
                Id = session.NewId(),
                HorseId = line.HorseId,
                EntryId = line.Id,
                Date = line.Date,
                OpenedAt = session.Now,
            }
        );

    /// <summary>The vets responsible for the open cases of some horses, each with who stands in today.</summary>
    public static async Task<ILookup<Guid, ConcernVet>> VetsAsync(RecordsSession session, Guid[] horseIds, CancellationToken cancellation)
    {
        RecordsContext records = session.Records;
        var responsible = await (
            from injury in ExerciseRows.OpenCases(records)
            join vet in records.People on injury.ResponsibleVetId equals vet.Id
            where horseIds.Contains(injury.HorseId)
            orderby injury.Id
            select new
            {
                injury.HorseId,
                vet.Id,
                vet.Name,
            }
        ).ToListAsync(cancellation);
        Dictionary<Guid, CoverView> covers = (await CoverRows.FromAsync(records, session.Today, cancellation))
            .Where(cover => cover.Holds(session.Today))
            .GroupBy(cover => cover.VetId)
            .ToDictionary(ofVet => ofVet.Key, ofVet => ofVet.First());
        return responsible
            .Distinct()
            .ToLookup(
                vet => vet.HorseId,
                vet =>
                    covers.TryGetValue(vet.Id, out CoverView? cover)
                        ? new ConcernVet(vet.Id, vet.Name, cover.CoveringVetId, cover.CoveringVet)
                        : new ConcernVet(vet.Id, vet.Name, null, null)
            );
    }
}
