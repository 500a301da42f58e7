using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Exercise;

/// <summary>Reads what was released; nothing else of a decision leaves with it.</summary>
internal static class ReleaseRows
{
    public static Release Read(string json) => JsonSerializer.Deserialize<Release>(json, RecordJson.Options)!;

    /// <summary>The latest release of each horse; those without one are left out.</summary>
    public static async Task<IReadOnlyDictionary<Guid, (Release Release, DateTime At)>> LatestAsync(
        RecordsContext records,
        Guid[] horseIds,
        CancellationToken cancellation
    )
    {
        var released = await records
            .Decisions.AsNoTracking()
            .Where(decision => horseIds.Contains(decision.HorseId) && decision.ReleasedAt != null && decision.ReleaseJson != null)
            .Select(decision => new
            {
                decision.HorseId,
                At = decision.ReleasedAt!.Value,
                Json = decision.ReleaseJson!,
            })
            .ToListAsync(cancellation);
        return released
            .GroupBy(row => row.HorseId)
            .ToDictionary(
                group => group.Key,
                group =>
                {
                    var latest = group.MaxBy(row => row.At)!;
                    return (Read(latest.Json), latest.At);
                }
            );
    }
}
