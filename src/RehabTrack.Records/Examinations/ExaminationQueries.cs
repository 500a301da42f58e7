using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Examinations;

/// <summary>What the rules of an examination need to know of its case and horse.</summary>
internal static class ExaminationQueries
{
    public static async Task<(Limb Limb, DateOnly? BirthDate)> OfCaseAsync(
        RecordsContext records,
        Guid caseId,
        CancellationToken cancellation
    )
    {
        var found = await (
            from injury in records.Cases
            join horse in records.Horses on injury.HorseId equals horse.Id
            where injury.Id == caseId
            select new { injury.Limb, horse.BirthDate }
        ).FirstOrDefaultAsync(cancellation);
        return (found?.Limb ?? Limb.Unknown, found?.BirthDate);
    }
}
