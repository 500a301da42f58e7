using RehabTrack.Rechecks.Anatomy;

namespace RehabTrack.Rechecks.Healing;

/// <summary>The lesions of a case and their trends.</summary>
internal static class LesionReader
{
    /// <summary>One a lesion, ordered by part and name. A case of one lesion has the trend of the case.</summary>
    public static IReadOnlyList<LesionTrend> Read(
        CaseGrid grid,
        LesionGrid all,
        Trend whole,
        TrendReader reader,
        IReadOnlyList<PartBurden> parts
    )
    {
        (LesionKey Key, LesionGrid Grid)[] shown =
        [
            .. KeysOf(grid).Select(key => (key, new LesionGrid(grid, key))).Where(lesion => Shows(grid, lesion.Item2)),
        ];
        return
        [
            .. shown
                .Select(lesion => new LesionTrend(
                    lesion.Key.Name,
                    PartOf(grid, shown.Length == 1 ? all : lesion.Grid, lesion.Key.Path),
                    shown.Length == 1 ? whole : reader.Read(lesion.Grid),
                    shown.Count(other => other.Key.Path == lesion.Key.Path) == 1
                        ? parts.First(part => part.Path == lesion.Key.Path).Burdens
                        : new BurdenReader(grid, lesion.Grid).Read()
                ))
                .OrderBy(lesion => lesion.Part)
                .ThenBy(lesion => lesion.Lesion, StringComparer.Ordinal),
        ];
    }

    private static IEnumerable<LesionKey> KeysOf(CaseGrid grid) =>
        grid
            .Tracks.SelectMany(track => track.Steps.Select(step => (track.Path, step.Place)))
            .Where(pair => pair.Place.IsAbnormal)
            .SelectMany(pair => pair.Place.Readings.Select(reading => new LesionKey(reading.Lesion, pair.Path)))
            .Distinct();

    private static bool Shows(CaseGrid grid, LesionGrid lesion) => Enumerable.Range(0, grid.Tracks.Count).Any(lesion.HasLesionEver);

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
