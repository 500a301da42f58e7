using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.People;

/// <summary>Whether a person's name stands under something of a horse's record.</summary>
internal static class PersonSignatures
{
    /// <summary>Whether the person signed an examination, a plan or a decision.</summary>
    public static async Task<bool> AnyAsync(RecordsContext records, Guid personId, CancellationToken cancellation) =>
        await records.Examinations.AnyAsync(examination => examination.SignedById == personId, cancellation)
        || await records.ExaminationVersions.AnyAsync(version => version.PersonId == personId, cancellation)
        || await records.ExerciseEntries.AnyAsync(
            entry =>
                entry.EnteredById == personId
                && (entry.Kind == ExerciseEntryKind.PlanSigned || entry.Kind == ExerciseEntryKind.DecisionSigned),
            cancellation
        );
}
