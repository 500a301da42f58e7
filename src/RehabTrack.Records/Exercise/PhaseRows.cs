using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Exercise;

/// <summary>Reads the phases that a horse's plan was in.</summary>
internal static class PhaseRows
{
    /// <summary>The phases up to a day; none for a horse without a line of exercise.</summary>
    public static async Task<IReadOnlyList<PlanPhaseStart>> OfAsync(
        RecordsContext records,
        Guid horseId,
        DateOnly today,
        CancellationToken cancellation
    )
    {
        ILookup<Guid, ExerciseEntryRecord> lines = await ExerciseRows.LinesAsync(records, [horseId], cancellation);
        if (!lines[horseId].Any())
        {
            return [];
        }

        string timeZone = await records
            .Practices.Where(practice => practice.Id == records.PracticeId)
            .Select(practice => practice.TimeZone)
            .FirstAsync(cancellation);
        PermitHistory history = (await ExerciseRows.HistoriesAsync(records, timeZone, [horseId], lines, cancellation))[horseId];
        return PlanPhaseReader.Of(PermitReader.Over(history, lines[horseId].Min(line => line.Date), today));
    }
}
