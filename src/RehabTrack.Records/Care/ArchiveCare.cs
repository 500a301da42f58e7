using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Care;

/// <summary>Puts a treatment, medicine or sign away with the reason; it stays in the history.</summary>
public sealed class ArchiveCare(RecordsAccess access) : Command<ArchiveCareInput, Saved>(access)
{
    private protected override Right Right => Right.WorkOnExercise;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        ArchiveCareInput input,
        CancellationToken cancellation
    )
    {
        CareRecord? kept = await session.Records.Care.FirstOrDefaultAsync(
            care => care.Id == input.Id && care.ArchivedAt == null,
            cancellation
        );
        if (kept is null)
        {
            return RecordProblems.NotFound("care");
        }

        if (kept.Version != input.Version)
        {
            return RecordProblems.ChangedMeanwhile;
        }

        Checks checks = new();
        string reason = checks.Words("reason", input.Reason);
        if (checks.Any)
        {
            return checks.Problems;
        }

        kept.ArchivedAt = session.Now;
        kept.ArchivedReason = reason;
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(kept.Id, kept.Version);
    }
}
