using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>Says that somebody of the practice has seen a concern. It lifts nothing.</summary>
public sealed class SeeConcern(RecordsAccess access) : Command<RecordInput, Saved>(access)
{
    private protected override Right Right => Right.WorkOnExercise;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        RecordInput input,
        CancellationToken cancellation
    )
    {
        ConcernRecord? concern = await session.Records.Concerns.FirstOrDefaultAsync(record => record.Id == input.Id, cancellation);
        if (concern is null)
        {
            return RecordProblems.NotFound("concern");
        }

        // Whoever saw it first stays named; a second person changes nothing.
        concern.SeenById ??= session.Person.Id;
        concern.SeenAt ??= session.Now;
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(concern.Id, concern.Version);
    }
}
