using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Examinations;

/// <summary>Puts a draft away; what was typed stays kept.</summary>
public sealed class ArchiveDraft(RecordsAccess access) : Command<RecordInput, Saved>(access)
{
    private protected override Right Right => Right.EnterExaminations;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        RecordInput input,
        CancellationToken cancellation
    )
    {
        ExaminationRecord? draft = await ExaminationStore.FindAsync(session.Records, input.Id, cancellation);
        if (draft is null)
        {
            return RecordProblems.NotFound("examination");
        }

        if (draft.State != ExaminationState.Draft)
        {
            return new Problem("examination", "already-signed");
        }

        if (draft.Version != input.Version)
        {
            return RecordProblems.ChangedMeanwhile;
        }

        draft.ArchivedAt = session.Now;
        await session.Records.SaveChangesAsync(cancellation);
        await ExerciseHolds.ReviewDraftsAsync(session, draft.CaseId, cancellation);
        return new Saved(draft.Id, draft.Version);
    }
}
