using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Examinations;

/// <summary>
/// Keeps what was entered of a draft, as often as is wanted. What would keep it from being signed comes back as cautions: nothing
/// entered is lost for being wrong.
/// </summary>
public sealed class SaveDraft(RecordsAccess access) : Command<SaveDraftInput, SavedDraft>(access)
{
    private protected override Right Right => Right.EnterExaminations;

    private protected override async Task<Outcome<SavedDraft>> WriteAsync(
        RecordsSession session,
        SaveDraftInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        ExaminationRecord? draft = await ExaminationStore.FindAsync(records, input.Id, cancellation);
        if (draft is null)
        {
            return RecordProblems.NotFound("examination");
        }

        if (draft.State != ExaminationState.Draft)
        {
            return new Problem("examination", "already-signed");
        }

        List<Problem> unstorable = ExaminationRules.Unstorable(input.Content);
        if (unstorable.Count > 0)
        {
            return unstorable;
        }

        List<ReadingRecord> kept = await ExaminationStore.ReadingsAsync(records, draft.Id, cancellation);
        if (draft.Version != input.Version)
        {
            List<Problem> conflict = ContentConflict.Between(ExaminationStore.ContentOf(draft, kept), input.Content);
            if (conflict.Count > 0)
            {
                return conflict;
            }

            if (draft.Typed != input.Typed)
            {
                return RecordProblems.ChangedMeanwhile;
            }
        }

        await ExaminationStore.ApplyAsync(session, draft, kept, input.Content, cancellation);
        draft.Typed = input.Typed;
        await records.SaveChangesAsync(cancellation);
        await ExerciseHolds.ReviewDraftsAsync(session, draft.CaseId, cancellation);
        (Limb limb, DateOnly? birth) = await ExaminationQueries.OfCaseAsync(records, draft.CaseId, cancellation);
        Guid[] ids = await records
            .Readings.Where(reading => reading.ExaminationId == draft.Id)
            .OrderBy(reading => reading.Position)
            .Select(reading => reading.Id)
            .ToArrayAsync(cancellation);
        return Outcome<SavedDraft>.Of(
            new SavedDraft(draft.Id, draft.Version, ids),
            [
                .. ExaminationRules.Check(input.Content, limb, birth, session.Today),
                .. ExaminationRules.Cautions(input.Content),
                .. await ExaminationRules.ScaleCautionsAsync(records, draft.CaseId, draft.Id, input.Content, cancellation),
            ]
        );
    }
}
