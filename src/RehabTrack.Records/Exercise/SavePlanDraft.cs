using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>
/// Keeps a plan as it is being written, as often as is wanted. What would keep it from being signed comes back as cautions; it permits
/// nothing before it is signed.
/// </summary>
public sealed class SavePlanDraft(RecordsAccess access) : Command<SavePlanDraftInput, Saved>(access)
{
    private protected override Right Right => Right.WorkOnExercise;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        SavePlanDraftInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        if (await ExerciseRows.HorseAsync(session, input.HorseId, cancellation) is null)
        {
            return RecordProblems.NotFound("horse");
        }

        if (PlanTexts.Unkeepable(input.Plan) is { Count: > 0 } unkeepable)
        {
            return unkeepable;
        }

        PlanDraftRecord? draft = await records.PlanDrafts.FirstOrDefaultAsync(record => record.HorseId == input.HorseId, cancellation);
        string content = JsonSerializer.Serialize(input.Plan, RecordJson.Options);
        if (draft is { ArchivedAt: null } && draft.Version != input.Version && draft.ContentJson != content)
        {
            return RecordProblems.ChangedMeanwhile;
        }

        if (draft is null)
        {
            draft = new PlanDraftRecord
            {
                Id = session.NewId(),
                HorseId = input.HorseId,
                ContentJson = content,
            };
            records.PlanDrafts.Add(draft);
        }

        draft.ArchivedAt = null;
        draft.ContentJson = content;
        draft.WrittenById = session.Person.Id;
        draft.WrittenAt = session.Now;
        await records.SaveChangesAsync(cancellation);
        return Outcome<Saved>.Of(new Saved(draft.Id, draft.Version), PlanRules.Check(input.Plan));
    }
}
