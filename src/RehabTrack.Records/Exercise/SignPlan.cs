using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Covers;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>Signs the plan that is being written as the next version, effective from a date, with the horse placed in it.</summary>
public sealed class SignPlan(RecordsAccess access) : Command<SignPlanInput, Saved>(access)
{
    private protected override Right Right => Right.DecideExercise;

    private protected override bool NeedsConfirmation => true;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        SignPlanInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        PlanDraftRecord? draft = await records.PlanDrafts.FirstOrDefaultAsync(
            record => record.HorseId == input.HorseId && record.ArchivedAt == null,
            cancellation
        );
        if (draft is null || await ExerciseRows.HorseAsync(session, input.HorseId, cancellation) is null)
        {
            return RecordProblems.NotFound("plan");
        }

        if (draft.Version != input.Version)
        {
            return RecordProblems.ChangedMeanwhile;
        }

        if (await HorseVets.RefusalAsync(session, input.HorseId, cancellation) is { } refusal)
        {
            return refusal;
        }

        List<ExerciseEntryRecord> lines = [.. (await ExerciseRows.LinesAsync(records, [input.HorseId], cancellation))[input.HorseId]];
        PlanVersion plan = JsonSerializer.Deserialize<PlanVersion>(draft.ContentJson, RecordJson.Options)! with
        {
            Id = RecordText.Of(session.NewId()),
            Number = lines.Count(line => line.Kind == ExerciseEntryKind.PlanSigned) + 1,
        };
        Checks checks = new();
        checks.AddRange(PlanRules.Check(plan));
        checks.AddRange(SignatureRules.Unseen(lines, input.SeenNumber));
        SignatureRules.Dates(checks, input.From, input.RecheckDate, session.Today);
        SignatureRules.Place(checks, plan, input.Place);
        if (!await ExerciseRows.HasOpenCaseAsync(records, input.HorseId, cancellation))
        {
            checks.Add(new Problem("horse", "no-open-case"));
        }

        if (checks.Any)
        {
            return checks.Problems;
        }

        ExerciseEntryRecord line = ExerciseRows.Add(
            session,
            input.HorseId,
            lines.Count + 1,
            new PlanSigned
            {
                Order = 0,
                RecordedOn = session.Today,
                Plan = plan,
                From = input.From,
                Place = input.Place,
                IsAdvance = input.IsAdvance,
                RecheckDate = input.RecheckDate,
                SignedBy = session.Person.Name,
            }
        );
        draft.ArchivedAt = session.Now;
        await records.SaveChangesAsync(cancellation);
        return new Saved(line.Id, line.Version);
    }
}
