using RehabTrack.Records.Archive;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Cases;

/// <summary>Brings a case back that was put away. What was signed meanwhile did not know of it: the work grows no more until a vet signs.</summary>
public sealed class BringBackCase(RecordsAccess access) : Command<RecordInput, Saved>(access)
{
    private protected override Right Right => Right.ChangeCases;

    private protected override Task<Outcome<Saved>> WriteAsync(RecordsSession session, RecordInput input, CancellationToken cancellation) =>
        ArchivedRecords.BringBackAsync(
            session,
            session.Records.Cases,
            input,
            "case",
            async injury =>
            {
                if (!await ArchivedRecords.IsHereAsync(session.Records, injury.HorseId, cancellation))
                {
                    return [ArchivedRecords.HorseFirst];
                }

                await ExerciseHolds.ReturnAsync(session, injury, cancellation);
                session.Touch(injury.Id);
                return [];
            },
            cancellation
        );
}
