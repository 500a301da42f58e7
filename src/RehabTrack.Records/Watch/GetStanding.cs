using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Watch;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Watch;

/// <summary>Reads what stands of an open case and of its horse's exercise; a closed case has nothing that needs a person.</summary>
public sealed class GetStanding(RecordsAccess access) : UseCase<Guid, IReadOnlyList<WatchedFinding>>(access)
{
    private protected override Right Right => Right.WorkOnExercise;

    private protected override async Task<Outcome<IReadOnlyList<WatchedFinding>>> RunAsync(
        RecordsSession session,
        Guid input,
        CancellationToken cancellation
    )
    {
        CaseRecord? injury = await session
            .Records.Cases.AsNoTracking()
            .FirstOrDefaultAsync(record => record.Id == input && record.ArchivedAt == null, cancellation);
        if (injury is null || await ExerciseRows.HorseAsync(session, injury.HorseId, cancellation) is null)
        {
            return RecordProblems.NotFound("case");
        }

        if (injury.ClosedAt is not null)
        {
            return Outcome<IReadOnlyList<WatchedFinding>>.Of([], []);
        }

        IReadOnlyList<StandingFinding> standing = await WatchRows.OfCaseAsync(session, injury, cancellation);
        ILookup<Guid, (Acknowledged What, Acknowledgement Who)> said = await WatchRows.AcknowledgedAsync(
            session,
            [injury.HorseId],
            cancellation
        );
        return Outcome<IReadOnlyList<WatchedFinding>>.Of(
            [.. standing.Select(finding => WatchRows.Watch(finding, said[injury.HorseId]))],
            []
        );
    }
}
