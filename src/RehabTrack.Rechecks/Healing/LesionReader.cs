using RehabTrack.Rechecks.Anatomy;

namespace RehabTrack.Rechecks.Healing;

/// <summary>The lesions of a case and their trends.</summary>
internal static class LesionReader
{
    /// <summary>One a lesion, ordered by part and name. A case of one lesion has the trend of the case.</summary>
    public static IReadOnlyList<LesionTrend> Read(CaseGrid grid, LesionGrid all, Trend whole, TrendReader reader)
    {
        LesionKey[] keys = [.. KeysOf(grid)];
        return
        [
            .. keys.Select(key =>
                {
                    LesionGrid own = new(grid, key);
                    return new LesionTrend(
                        key.Name,
                        PartOf(grid, keys.Length == 1 ? all : own, key.Path),
                        keys.Length == 1 ? whole : reader.Read(own)
                    );
                })
                .OrderBy(lesion => lesion.Part)
                .ThenBy(lesion => lesion.Lesion, StringComparer.Ordinal),
        ];
    }

    private static IEnumerable<LesionKey> KeysOf(CaseGrid grid) =>
        grid
            .Tracks.SelectMany(track => track.Steps.Select(step => (track.Path, step.Place)))
            .Where(pair => pair.Place.IsAbnormal)
            .SelectMany(pair => pair.Place.Readings.Select(reading => new LesionKey(reading.Lesion, pair.Path)))
            .Distinct()
            .Where(key => Shows(grid, key));

    private static bool Shows(CaseGrid grid, LesionKey key)
    {
        LesionGrid own = new(grid, key);
        return Enumerable.Range(0, grid.Tracks.Count).Any(own.HasLesionEver);
    }

    // The part of most places that show it; the more proximal on a tie.
    private static Part PartOf(CaseGrid grid, LesionGrid lesion, LinkPath path) =>
        Enumerable
            .Range(0, grid.Tracks.Count)
            .Where(t => grid.Tracks[t].Path == path)
            .SelectMany(t =>
                Enumerable
                    .Range(0, grid.Examinations.Count)
                    .Where(e => lesion.Cell(e, t).IsAbnormal)
                    .Select(e => grid.Step(e, t)!.Place.Part)
            )
            .GroupBy(part => part)
            .OrderByDescending(parts => parts.Count())
            .ThenBy(parts => parts.Key)
            .First()
            .Key;
}
