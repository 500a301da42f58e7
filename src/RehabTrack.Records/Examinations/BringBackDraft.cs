using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Archive;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Examinations;

/// <summary>Brings a draft back that was put away, with all that was typed into it. It counts as written now: whoever signed meanwhile did not see it.</summary>
public sealed class BringBackDraft(RecordsAccess access) : Command<RecordInput, Saved>(access)
{
    private protected override Right Right => Right.EnterExaminations;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        RecordInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        Outcome<ExaminationRecord> found = await ArchivedRecords.FindAsync(records.Examinations, input, "examination", cancellation);
        if (!found.Succeeded)
        {
            return Outcome<Saved>.Failed(found.Problems);
        }

        ExaminationRecord draft = found.Value;
        CaseRecord injury = await records.Cases.AsNoTracking().FirstAsync(record => record.Id == draft.CaseId, cancellation);
        if (!await ArchivedRecords.IsHereAsync(records, injury.HorseId, cancellation))
        {
            return ArchivedRecords.HorseFirst;
        }

        if (injury.ArchivedAt is not null)
        {
            return ArchivedRecords.CaseFirst;
        }

        draft.WrittenAt = session.Now;
        Outcome<Saved> back = await ArchivedRecords.BringBackAsync(session, draft, cancellation);
        await ExerciseHolds.ReviewDraftsAsync(session, draft.CaseId, cancellation);
        return back;
    }
}
