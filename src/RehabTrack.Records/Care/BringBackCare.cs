using RehabTrack.Records.Archive;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Care;

/// <summary>Brings a treatment, medicine or sign back that was put away; why it was put away stays in the history.</summary>
public sealed class BringBackCare(RecordsAccess access) : Command<RecordInput, Saved>(access)
{
    private protected override Right Right => Right.WorkOnExercise;

    private protected override Task<Outcome<Saved>> WriteAsync(RecordsSession session, RecordInput input, CancellationToken cancellation) =>
        ArchivedRecords.BringBackAsync(
            session,
            session.Records.Care,
            input,
            "care",
            async care =>
            {
                if (!await ArchivedRecords.IsHereAsync(session.Records, care.HorseId, cancellation))
                {
                    return [ArchivedRecords.HorseFirst];
                }

                care.ArchivedReason = null;
                return [];
            },
            cancellation
        );
}
