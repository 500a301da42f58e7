using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Cases;

/// <summary>What the particulars of a case must keep to.</summary>
internal static class CaseRules
{
    private static readonly ReferenceTable Limits = ReferenceTable.Load("limits");

    /// <summary>What ends with a case cannot be done to a closed one.</summary>
    public static Problem Closed { get; } = new("case", "case-closed");

    public static void Dates(
        Checks checks,
        DateOnly? onset,
        DateOnly? reinjury,
        DateOnly? firstDiagnosis,
        HorseRecord horse,
        DateOnly today
    )
    {
        Date(checks, "onset", onset, horse, today);
        Date(checks, "reinjury", reinjury, horse, today);
        Date(checks, "firstDiagnosis", firstDiagnosis, horse, today);
        if (reinjury < onset)
        {
            checks.Add(new Problem("reinjury", "reinjury-before-onset", RecordText.Of(reinjury.Value), RecordText.Of(onset.Value)));
        }
    }

    public static void Place(Checks checks, Limb limb, Landmark? landmark)
    {
        if (landmark is { } given && !AnatomyRules.LandmarksOf(limb).Contains(given))
        {
            checks.Add(
                new Problem("landmark", "landmark-not-of-limb", AnatomyCodes.Landmarks.CodeOf(given), AnatomyCodes.Limbs.CodeOf(limb))
            );
        }
    }

    public static void Target(Checks checks, double? fraction)
    {
        if (fraction is { } share && !(share is > 0 and <= 1))
        {
            checks.Add(new Problem("targetFraction", "setting-not-a-share", RecordText.Of(share)));
        }
    }

    public static void HockToJoint(Checks checks, Limb limb, double? distance)
    {
        if (distance is not { } given)
        {
            return;
        }

        double longest = Limits["longestHockToJointCm"];
        if (!(given > 0 && given <= longest))
        {
            checks.Add(new Problem("hockToJointCm", "distance-out-of-range", RecordText.Of(given), RecordText.Of(longest)));
        }
        else if (limb != Limb.Unknown && !AnatomyRules.IsHind(limb))
        {
            checks.Add(new Problem("hockToJointCm", "distance-not-of-limb", AnatomyCodes.Limbs.CodeOf(limb)));
        }
    }

    public static void ZoneLength(Checks checks, double? length) =>
        checks.AddRange(ZoneRules.CheckLength(length).Select(problem => problem with { Field = "zoneLengthCm" }));

    public static async Task VetAsync(Checks checks, RecordsContext records, Guid? vetId, CancellationToken cancellation)
    {
        if (
            vetId is { } id
            && !await records.People.AnyAsync(
                person => person.Id == id && person.Role == Role.Vet && person.ArchivedAt == null,
                cancellation
            )
        )
        {
            checks.Add(RecordProblems.NotFound("responsibleVetId"));
        }
    }

    private static void Date(Checks checks, string field, DateOnly? date, HorseRecord horse, DateOnly today)
    {
        if (date is { } given)
        {
            checks.AddRange(DateRules.CheckOnset(given, horse.BirthDate, today).Select(problem => problem with { Field = field }));
        }
    }
}
