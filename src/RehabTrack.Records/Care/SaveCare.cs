using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Care;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Care;

/// <summary>Keeps or corrects a treatment, medicine or sign. A stand-down date is the vet's own: only a vet sets or changes it.</summary>
public sealed class SaveCare(RecordsAccess access) : Command<SaveCareInput, Saved>(access)
{
    private protected override Right Right => Right.WorkOnExercise;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        SaveCareInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        if (await ExerciseRows.HorseAsync(session, input.HorseId, cancellation) is null)
        {
            return RecordProblems.NotFound("horse");
        }

        CareRecord? kept = input.Id is { } id
            ? await records.Care.FirstOrDefaultAsync(
                care => care.Id == id && care.HorseId == input.HorseId && care.ArchivedAt == null,
                cancellation
            )
            : null;
        if (input.Id is not null && kept is null)
        {
            return RecordProblems.NotFound("care");
        }

        if (kept is not null && kept.Version != input.Version)
        {
            return RecordProblems.ChangedMeanwhile;
        }

        Checks checks = new();
        checks.AddRange(CareRules.Check(input.Entry, session.Today));
        CareEntry entry = input.Entry with
        {
            Context = checks.Text("context", input.Entry.Context),
            Words = checks.Text("words", input.Entry.Words),
        };
        Guid? caseId = null;
        if (entry.CaseId is { } named)
        {
            caseId = Guid.TryParse(named, out Guid parsed) ? parsed : null;
            if (
                caseId is null
                || !await records.Cases.AnyAsync(injury => injury.Id == caseId && injury.HorseId == input.HorseId, cancellation)
            )
            {
                return RecordProblems.NotFound("case");
            }
        }

        DateOnly? before = kept?.StandDownUntil;
        if (entry.StandDownUntil != before && !session.Allows(Right.DecideExercise))
        {
            checks.Add(RecordProblems.VetOnly("standDownUntil"));
        }

        if (checks.Any)
        {
            return checks.Problems;
        }

        if (kept is null)
        {
            kept = new CareRecord
            {
                Id = session.NewId(),
                HorseId = input.HorseId,
                EnteredById = session.Person.Id,
                EnteredAt = session.Now,
            };
            records.Care.Add(kept);
        }
        else
        {
            kept.CorrectedById = session.Person.Id;
            kept.CorrectedAt = session.Now;
        }

        if (entry.StandDownUntil != before)
        {
            kept.StandDownById = entry.StandDownUntil is null ? null : session.Person.Id;
        }

        CareRows.Write(kept, entry, caseId);
        await records.SaveChangesAsync(cancellation);
        return new Saved(kept.Id, kept.Version);
    }
}
