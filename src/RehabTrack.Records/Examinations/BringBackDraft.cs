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
        Guid? caseId = null;
        Outcome<Saved> back = await ArchivedRecords.BringBackAsync(
            session,
            session.Records.Examinations,
            input,
            "examination",
            async draft =>
            {
                CaseRecord injury = await session
                    .Records.Cases.AsNoTracking()
                    .FirstAsync(record => record.Id == draft.CaseId, cancellation);
                if (!await ArchivedRecords.IsHereAsync(session.Records, injury.HorseId, cancellation))
                {
                    return [ArchivedRecords.HorseFirst];
                }

                if (injury.ArchivedAt is not null)
                {
                    return [ArchivedRecords.CaseFirst];
                }

                draft.WrittenAt = session.Now;
                caseId = injury.Id;
                return [];
            },
            cancellation
        );
        if (caseId is { } touched)
        {
            await ExerciseHolds.ReviewDraftsAsync(session, touched, cancellation);
        }

        return back;
    }
}
