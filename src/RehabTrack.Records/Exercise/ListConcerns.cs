using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>
/// Lists the concerns that wait for a vet's signature: first those of the person who asks and of vets they stand in for, then what nobody
/// has seen, then the latest.
/// </summary>
public sealed class ListConcerns(RecordsAccess access) : UseCase<NoInput, IReadOnlyList<WaitingConcern>>(access)
{
    private protected override Right Right => Right.WorkOnExercise;

    private protected override async Task<Outcome<IReadOnlyList<WaitingConcern>>> RunAsync(
        RecordsSession session,
        NoInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        var waiting = await (
            from concern in records.Concerns.AsNoTracking()
            join line in records.ExerciseEntries.AsNoTracking() on concern.EntryId equals line.Id
            join horse in records.Horses on concern.HorseId equals horse.Id
            join stands in records.Yards on horse.YardId equals stands.Id into yards
            from yard in yards.DefaultIfEmpty()
            where
                horse.ArchivedAt == null
                && ExerciseRows.OpenCases(records).Any(injury => injury.HorseId == horse.Id)
                && !ExerciseRows.Signatures(records).Any(later => later.HorseId == horse.Id && later.Number > line.Number)
            select new
            {
                Concern = concern,
                Line = line,
                horse.Name,
                Yard = yard == null ? null : yard.Name,
            }
        ).ToListAsync(cancellation);
        ILookup<Guid, ConcernVet> vets = await ConcernRows.VetsAsync(
            session,
            [.. waiting.Select(row => row.Concern.HorseId).Distinct()],
            cancellation
        );
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
            records,
            waiting.SelectMany(row => new Guid?[] { row.Line.EnteredById, row.Concern.SeenById }),
            cancellation
        );
        return waiting
            .Select(row => new WaitingConcern
            {
                Id = row.Concern.Id,
                Version = row.Concern.Version,
                HorseId = row.Concern.HorseId,
                HorseName = row.Name,
                Yard = row.Yard,
                Line = ExerciseRows.Tell(row.Line, names),
                OpenedAt = row.Concern.OpenedAt,
                SeenBy = PersonNames.Name(names, row.Concern.SeenById),
                SeenAt = row.Concern.SeenAt,
                Vets = [.. vets[row.Concern.HorseId]],
                IsForReader = vets[row.Concern.HorseId].Any(vet => vet.Id == session.Person.Id || vet.CoveringId == session.Person.Id),
            })
            .OrderByDescending(concern => concern.IsForReader)
            .ThenBy(concern => concern.SeenAt is not null)
            .ThenByDescending(concern => concern.OpenedAt)
            .ThenByDescending(concern => concern.Id)
            .ToList();
    }
}
