using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Cases;

/// <summary>Opens a case: one injury of one limb.</summary>
public sealed class OpenCase(RecordsAccess access) : Command<OpenCaseInput, Saved>(access)
{
    private protected override Right Right => Right.ChangeCases;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        OpenCaseInput input,
        CancellationToken cancellation
    )
    {
        HorseRecord? horse = await session
            .Records.Horses.AsNoTracking()
            .FirstOrDefaultAsync(record => record.Id == input.HorseId && record.ArchivedAt == null, cancellation);
        if (horse is null)
        {
            return RecordProblems.NotFound("horseId");
        }

        Checks checks = new();
        string? diagnosis = checks.Text("diagnosis", input.Diagnosis);
        string? work = checks.Line("targetWork", input.TargetWork);
        CaseRules.Dates(checks, input.Onset, null, input.FirstDiagnosis, horse, session.Today);
        CaseRules.Place(checks, input.Limb, input.Landmark);
        CaseRules.Target(checks, input.TargetFraction);
        CaseRules.HockToJoint(checks, input.Limb, input.HockToJointCm);
        CaseRules.ZoneLength(checks, input.ZoneLengthCm);
        Guid? vetId = input.ResponsibleVetId ?? (session.Person.Role == Role.Vet ? session.Person.Id : null);
        await CaseRules.VetAsync(checks, session.Records, vetId, cancellation);
        if (checks.Any)
        {
            return checks.Problems;
        }

        CaseRecord injury = new()
        {
            Id = session.NewId(),
            HorseId = horse.Id,
            Limb = input.Limb,
            Structure = input.Structure,
            Landmark = input.Landmark ?? AnatomyRules.UsualLandmark(input.Limb),
            Onset = input.Onset,
            FirstDiagnosis = input.FirstDiagnosis,
            Diagnosis = diagnosis,
            TargetWork = work,
            TargetFraction = input.TargetFraction,
            OtherLimb = input.OtherLimb,
            HockToJointCm = input.HockToJointCm,
            ZoneLengthCm = input.ZoneLengthCm,
            ResponsibleVetId = vetId,
        };
        session.Records.Cases.Add(injury);
        session.Touch(injury.Id);
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(injury.Id, injury.Version);
    }
}
