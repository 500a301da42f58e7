using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Records.Covers;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>
/// Signs a decision on a visit and keeps what it rested on. It is never changed: a correction is a new decision. What owner and trainer
/// read is released by itself.
/// </summary>
public sealed class SignDecision(RecordsAccess access) : Command<SignDecisionInput, Saved>(access)
{
    private protected override Right Right => Right.DecideExercise;

    private protected override bool NeedsConfirmation => true;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        SignDecisionInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        if (await ExerciseRows.HorseAsync(session, input.HorseId, cancellation) is null)
        {
            return RecordProblems.NotFound("horse");
        }

        // To stop the work is every vet's: it can only lower.
        if (input.Decision.Kind != DecisionKind.Stop && await HorseVets.RefusalAsync(session, input.HorseId, cancellation) is { } refusal)
        {
            return refusal;
        }

        List<ExerciseEntryRecord> lines = [.. (await ExerciseRows.LinesAsync(records, [input.HorseId], cancellation))[input.HorseId]];
        Decision decision = input.Decision with { Reason = input.Decision.Reason.Trim(), SignedBy = session.Person.Name };
        DecisionGround ground = await GroundReader.ReadAsync(session, input.HorseId, input.Asked, input.Visit, cancellation);
        Checks checks = new();
        checks.AddRange(SignatureRules.Unseen(lines, input.SeenNumber));
        string? disagreement = checks.Text("disagreement", input.Disagreement);
        checks.Name("reason", decision.Reason);
        checks.Text("lamenessContext", input.Visit.LamenessContext);
        checks.Text("visitNote", input.Visit.Note);
        if (PlanOf(lines, decision) is not { } plan)
        {
            checks.Add(new Problem("plan", "no-signed-plan"));
        }
        else
        {
            checks.AddRange(DecisionRules.Check(decision, plan));
        }

        if (decision.Kind is DecisionKind.Advance or DecisionKind.StepBack or DecisionKind.Hold)
        {
            SignatureRules.Dates(checks, decision.From, decision.RecheckDate, session.Today);
        }

        if (decision.ValidUntil < decision.From)
        {
            checks.Add(new Problem("validUntil", "valid-until-before-start", RecordText.Of(decision.ValidUntil.Value)));
        }

        if (disagreement is null && Differs(decision.Kind, ground.Suggested))
        {
            checks.Add(new Problem("disagreement", "disagreement-missing", ground.Suggested.ToString()!));
        }

        if (
            input.CorrectsId is { } corrected
            && !await records.Decisions.AnyAsync(decision => decision.Id == corrected && decision.HorseId == input.HorseId, cancellation)
        )
        {
            checks.Add(RecordProblems.NotFound("corrects"));
        }

        if (checks.Any)
        {
            return checks.Problems;
        }

        ExerciseEntryRecord line = ExerciseRows.Add(
            session,
            input.HorseId,
            lines.Count + 1,
            new DecisionSigned
            {
                Order = 0,
                RecordedOn = session.Today,
                Decision = decision,
            }
        );
        DecisionRecord kept = new()
        {
            Id = session.NewId(),
            HorseId = input.HorseId,
            EntryId = line.Id,
            GroundJson = JsonSerializer.Serialize(ground, RecordJson.Options),
            Disagreement = disagreement,
            CorrectsId = input.CorrectsId,
        };
        records.Decisions.Add(kept);
        TypedFormRows.PutAway(session, await TypedFormRows.OfAsync(session, input.HorseId, TypedForm.Decision, cancellation));
        await records.SaveChangesAsync(cancellation);
        return new Saved(kept.Id, kept.Version);
    }

    private static PlanVersion? PlanOf(IEnumerable<ExerciseEntryRecord> lines, Decision decision) =>
        lines
            .Where(line => line.Kind == ExerciseEntryKind.PlanSigned)
            .Select(line => ((PlanSigned)ExerciseRows.Read(line, line.Number)).Plan)
            .LastOrDefault(plan => string.Equals(plan.Id, decision.PlanVersionId, StringComparison.Ordinal));

    // A pause or an end is no answer to what the rules say of the work.
    private static bool Differs(DecisionKind kind, SuggestedMove? suggested) =>
        kind switch
        {
            DecisionKind.Advance => suggested is not (null or SuggestedMove.Advance),
            DecisionKind.Hold => suggested is not (null or SuggestedMove.Hold),
            DecisionKind.StepBack => suggested is not (null or SuggestedMove.StepBack),
            DecisionKind.Stop => suggested is not (null or SuggestedMove.Stop),
            DecisionKind.Pause or DecisionKind.Close => false,
        };
}
