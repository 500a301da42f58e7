namespace RehabTrack.Rechecks.Healing;

/// <summary>The paths of a case that ever showed lesion.</summary>
internal static class PartReader
{
    /// <summary>One a path, in the order of paths. A case that was read on one path alone has the burdens of the case.</summary>
    public static IReadOnlyList<PartBurden> Read(CaseGrid grid, LesionGrid all, IReadOnlyList<ExaminationBurden> whole) =>
        [
            .. Enumerable
                .Range(0, grid.Tracks.Count)
                .Where(all.HasLesionEver)
                .Select(t => grid.Tracks[t].Path)
                .Distinct()
                .Select(path => new PartBurden(
                    path,
                    grid.Tracks.All(track => track.Path == path) ? whole : new BurdenReader(grid, new LesionGrid(grid, null, path)).Read()
                )),
        ];
}
