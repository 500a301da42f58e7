using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Cases;

/// <summary>Puts a case away that was opened or imported by mistake: no longer listed, all of it kept.</summary>
public sealed class ArchiveCase(RecordsAccess access) : Command<RecordInput, Saved>(access)
{
    private protected override Right Right => Right.ChangeCases;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        RecordInput input,
        CancellationToken cancellation
    )
    {
        CaseRecord? injury = await session.Records.Cases.FirstOrDefaultAsync(
            record => record.Id == input.Id && record.ArchivedAt == null,
            cancellation
        );
        if (injury is null)
        {
            return RecordProblems.NotFound("case");
        }

        if (injury.Version != input.Version)
        {
            return RecordProblems.ChangedMeanwhile;
        }

        injury.ArchivedAt = session.Now;
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(injury.Id, injury.Version);
    }
}
