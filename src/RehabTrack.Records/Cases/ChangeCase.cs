using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Cases;

/// <summary>Changes the particulars of a case.</summary>
public sealed class ChangeCase(RecordsAccess access) : Command<ChangeCaseInput, Saved>(access)
{
    private protected override Right Right => Right.ChangeCases;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        ChangeCaseInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        CaseRecord? injury = await records.Cases.FirstOrDefaultAsync(
            record => record.Id == input.Id && record.ArchivedAt == null,
            cancellation
        );
        if (injury is null)
        {
            return RecordProblems.NotFound("case");
        }

        HorseRecord horse = await records.Horses.AsNoTracking().FirstAsync(record => record.Id == injury.HorseId, cancellation);
        Checks checks = new();
        string? diagnosis = checks.Text("diagnosis", input.Diagnosis);
        string? work = checks.Line("targetWork", input.TargetWork);
        CaseRules.Dates(checks, input.Onset, input.Reinjury, input.FirstDiagnosis, horse, session.Today);
        CaseRules.Place(checks, input.Limb, input.Landmark);
        CaseRules.Target(checks, input.TargetFraction);
        CaseRules.HockToJoint(checks, input.Limb, input.HockToJointCm);
        CaseRules.ZoneLength(checks, input.ZoneLengthCm);
        if (input.ResponsibleVetId != injury.ResponsibleVetId)
        {
            await CaseRules.VetAsync(checks, records, input.ResponsibleVetId, cancellation);
        }

        if (checks.Any)
        {
            return checks.Problems;
        }

        if (injury.Version != input.Version)
        {
            Conflict conflict = new Conflict()
                .Field("limb", injury.Limb, input.Limb)
                .Field("structure", injury.Structure, input.Structure)
                .Field("landmark", injury.Landmark, input.Landmark)
                .Field("onset", injury.Onset, input.Onset)
                .Field("reinjury", injury.Reinjury, input.Reinjury)
                .Field("firstDiagnosis", injury.FirstDiagnosis, input.FirstDiagnosis)
                .Field("diagnosis", injury.Diagnosis, diagnosis)
                .Field("targetWork", injury.TargetWork, work)
                .Field("targetFraction", injury.TargetFraction, input.TargetFraction)
                .Field("otherLimb", injury.OtherLimb, input.OtherLimb)
                .Field("hockToJointCm", injury.HockToJointCm, input.HockToJointCm)
                .Field("zoneLengthCm", injury.ZoneLengthCm, input.ZoneLengthCm)
                .Field("responsibleVetId", injury.ResponsibleVetId, input.ResponsibleVetId);
            if (conflict.Any)
            {
                return conflict.Problems;
            }
        }

        injury.Limb = input.Limb;
        injury.Structure = input.Structure;
        injury.Landmark = input.Landmark;
        injury.Onset = input.Onset;
        injury.Reinjury = input.Reinjury;
        injury.FirstDiagnosis = input.FirstDiagnosis;
        injury.Diagnosis = diagnosis;
        injury.TargetWork = work;
        injury.TargetFraction = input.TargetFraction;
        injury.OtherLimb = input.OtherLimb;
        injury.HockToJointCm = input.HockToJointCm;
        injury.ZoneLengthCm = input.ZoneLengthCm;
        injury.ResponsibleVetId = input.ResponsibleVetId;
        session.Touch(injury.Id);
        await records.SaveChangesAsync(cancellation);
        return new Saved(injury.Id, injury.Version);
    }
}
