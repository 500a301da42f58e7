using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Examinations;

/// <summary>What the rules of an examination need to know of its horse.</summary>
internal static class ExaminationQueries
{
    public static Task<DateOnly?> BirthDateAsync(RecordsContext records, Guid caseId, CancellationToken cancellation) =>
        (
            from injury in records.Cases
            join horse in records.Horses on injury.HorseId equals horse.Id
            where injury.Id == caseId
            select horse.BirthDate
        ).FirstOrDefaultAsync(cancellation);
}
