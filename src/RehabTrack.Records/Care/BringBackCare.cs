using RehabTrack.Records.Archive;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Care;

/// <summary>Brings a treatment, medicine or sign back that was put away; why it was put away stays in the history.</summary>
public sealed class BringBackCare(RecordsAccess access) : Command<RecordInput, Saved>(access)
{
    private protected override Right Right => Right.WorkOnExercise;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        RecordInput input,
        CancellationToken cancellation
    )
    {
        Outcome<CareRecord> found = await ArchivedRecords.FindAsync(session.Records.Care, input, "care", cancellation);
        if (!found.Succeeded)
        {
            return Outcome<Saved>.Failed(found.Problems);
        }

        CareRecord care = found.Value;
        if (!await ArchivedRecords.IsHereAsync(session.Records, care.HorseId, cancellation))
        {
            return ArchivedRecords.HorseFirst;
        }

        care.ArchivedReason = null;
        return await ArchivedRecords.BringBackAsync(session, care, cancellation);
    }
}
