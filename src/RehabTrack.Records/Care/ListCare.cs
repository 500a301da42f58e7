using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Care;

/// <summary>Lists treatments, medicines and signs of a horse, latest first. Owner and trainer never see them.</summary>
public sealed class ListCare(RecordsAccess access) : UseCase<Guid, IReadOnlyList<CareView>>(access)
{
    private protected override Right Right => Right.WorkOnExercise;

    private protected override async Task<Outcome<IReadOnlyList<CareView>>> RunAsync(
        RecordsSession session,
        Guid input,
        CancellationToken cancellation
    )
    {
        if (await ExerciseRows.HorseAsync(session, input, cancellation) is null)
        {
            return RecordProblems.NotFound("horse");
        }

        List<CareRecord> rows = await session
            .Records.Care.AsNoTracking()
            .Where(care => care.HorseId == input && care.ArchivedAt == null)
            .OrderByDescending(care => care.From)
            .ThenByDescending(care => care.Id)
            .ToListAsync(cancellation);
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
            session.Records,
            rows.SelectMany(care => new[] { care.EnteredById, care.CorrectedById, care.StandDownById }),
            cancellation
        );
        return rows.Select(care => new CareView
            {
                Id = care.Id,
                Version = care.Version,
                Entry = CareRows.Read(care),
                EnteredBy = PersonNames.Name(names, care.EnteredById) ?? "",
                EnteredAt = care.EnteredAt,
                CorrectedBy = PersonNames.Name(names, care.CorrectedById),
                CorrectedAt = care.CorrectedAt,
                StandDownBy = PersonNames.Name(names, care.StandDownById),
            })
            .ToList();
    }
}
