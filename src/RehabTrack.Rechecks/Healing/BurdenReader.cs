using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Healing;

/// <summary>The size at each examination of what the lesions given speak of: the whole injury, a part of it, or one lesion.</summary>
internal sealed class BurdenReader(CaseGrid grid, LesionGrid lesions)
{
    // Fewer levels than these are a triplet: enough to document a lesion, not to classify the structure.
    private const int FewestForSeverity = 4;

    private readonly int[] _followed = FollowedBy(grid, lesions.Path);

    /// <summary>One an examination, ordered by date and id.</summary>
    public IReadOnlyList<ExaminationBurden> Read() => [.. Enumerable.Range(0, grid.Examinations.Count).Select(BurdenOf)];

    private ExaminationBurden BurdenOf(int e)
    {
        Examination examination = grid.Examinations[e];
        IReadOnlyList<Place> places = PlacesAt(e);
        Place[] across = [.. places.Where(IsAcross)];
        VolumeFigure? volume = lesions.VolumeAt(e);
        Percent? total = TotalOf(across);
        bool complete = total is not null && IsComplete(e, across);
        Place? worst = places.Where(place => ShareOf(place) is not null).MaxBy(place => ShareOf(place)!.Value);
        Percent? largest = worst is null ? null : ShareOf(worst);
        return new ExaminationBurden
        {
            ExaminationId = examination.Id,
            Date = examination.Date,
            Volume = volume is { } figure ? new CubicCentimetres(figure.Volume) : null,
            VolumeStandardError = volume is { } withError ? new CubicCentimetres(withError.StandardError) : null,
            VolumeIsLowerBound = volume?.IsLowerBound ?? false,
            TotalPercent = total,
            LevelsComplete = complete,
            Severity = SeverityOf(across, total, complete),
            WorstPercent = largest,
            WorstLevel = largest is { Value: > 0 } ? worst!.Level : null,
            LesionLength = LengthOf(places, Level.ScaleOf(examination.Zones, grid.Course.ZoneLength)),
            EchogenicitySum = SumOf(places.Select(place => GradeOf(place, place.Echogenicity, static reading => reading.Echogenicity))),
            FibreAlignmentSum = SumOf(
                places.Select(place => GradeOf(place, place.FibreAlignment, static reading => reading.FibreAlignment))
            ),
            LesionTracksMissed = [.. lesions.MissedAt(e).Select(track => grid.Tracks[track].Id)],
        };
    }

    // 100·Σlesion/Σligament over all levels read (ECM 330). A level read without a known lesion area would be left out of the sum and the
    // share come out too large, so there is no total then.
    private Percent? TotalOf(IReadOnlyList<Place> across)
    {
        double lesion = 0;
        double ligament = 0;
        foreach (Place place in across)
        {
            if (place.LigamentArea is not { Value: > 0 } area)
            {
                continue;
            }

            if (AreaOf(place).MeasuredArea is not { } measured)
            {
                return null;
            }

            lesion += measured.Value;
            ligament += area.Value;
        }

        return ligament > 0 ? Percent.Of(new SquareCentimetres(lesion), new SquareCentimetres(ligament)) : null;
    }

    // Every level that the case follows was read with both areas, and each path with lesion is read to a normal level on both sides.
    private bool IsComplete(int e, IReadOnlyList<Place> across) =>
        across.All(place => place.LigamentArea is not null && AreaOf(place).MeasuredArea is not null)
        && Array.TrueForAll(_followed, track => grid.Step(e, track) is not null)
        && across
            .GroupBy(place => place.Key.Path)
            .Where(path => path.Any(IsAbnormal))
            .All(path => !IsAbnormal(path.First()) && !IsAbnormal(path.Last()));

    // A branch is classed by its worst section, whatever else was looked at; every other path by the share of all its levels. Where both
    // show lesion there is no class for the whole: the scales divide by different things. One of several lesions of a path has none either.
    private SeverityGrade? SeverityOf(IReadOnlyList<Place> across, Percent? total, bool complete)
    {
        Place[] shown = [.. across.Where(IsAbnormal)];
        int inBranches = shown.Count(place => IsBranch(place.Key.Path));
        if (lesions.Lesion is not null || (inBranches > 0 && inBranches < shown.Length))
        {
            return null;
        }

        if (inBranches > 0 || (lesions.Path is { } path && IsBranch(path)))
        {
            Percent[] sections = [.. shown.Select(ShareOf).OfType<Percent>()];
            return sections.Length > 0 ? SeverityScales.Of(SeverityScales.BranchSection, sections.Max()) : null;
        }

        return complete && across.Count >= FewestForSeverity && total is { } share
            ? SeverityScales.Of(SeverityScales.TotalPercent, share)
            : null;
    }

    // From the first to the last abnormal level of each path, plus half the gap to the normal level read beside each end.
    private Centimetres? LengthOf(IReadOnlyList<Place> places, double? scale)
    {
        double? length = null;
        foreach (IGrouping<LinkPath, Place> path in places.GroupBy(place => place.Key.Path))
        {
            Place[] levels = [.. path.OrderBy(place => place.Level)];
            int first = Array.FindIndex(levels, IsAbnormal);
            if (first < 0)
            {
                continue;
            }

            int last = Array.FindLastIndex(levels, IsAbnormal);
            double above = first > 0 ? Between(levels[first - 1], levels[first]) / 2 : 0;
            double below = last < levels.Length - 1 ? Between(levels[last], levels[last + 1]) / 2 : 0;
            length = (length ?? 0) + above + Between(levels[first], levels[last]) + below;
        }

        return length * scale is { } known ? new Centimetres(known) : null;
    }

    private static double Between(Place above, Place below) => (below.Level.Position - above.Level.Position).Value;

    // Grades of different scales do not add up.
    private static int? SumOf(IEnumerable<Grade?> grades)
    {
        Grade[] given = [.. grades.OfType<Grade>()];
        return given.Length > 0 && given.All(grade => grade.Scale == given[0].Scale) ? given.Sum(grade => grade.Value) : null;
    }

    private IReadOnlyList<Place> PlacesAt(int e) =>
        lesions.Path is { } path ? [.. grid.PlacesAt(e).Where(place => place.Key.Path == path)] : grid.PlacesAt(e);

    private LesionArea AreaOf(Place place) => lesions.Lesion is { } lesion ? lesion.AreaAt(place) : LesionKey.AreaOfAll(place);

    private Percent? ShareOf(Place place) => lesions.Lesion is { } lesion ? lesion.ShareAt(place) : place.LesionPercent;

    private bool IsAbnormal(Place place) => lesions.Lesion is { } lesion ? lesion.ShowsAt(place) : place.IsAbnormal;

    // Of one lesion, the worst grade that names it.
    private Grade? GradeOf(Place place, Grade? worst, Func<Reading, Grade?> gradeOf) =>
        lesions.Lesion is not { } lesion
            ? worst
            : place
                .Readings.Where(reading => string.Equals(reading.Lesion, lesion.Name, StringComparison.Ordinal))
                .Select(gradeOf)
                .OfType<Grade>()
                .MaxBy(grade => grade.Value);

    private static bool IsBranch(LinkPath path) => path is LinkPath.MedialBranch or LinkPath.LateralBranch;

    private static bool IsAcross(Place place) => place.Readings.Any(reading => reading.Plane == ImagePlane.ShortAxis);

    // Read at two examinations or more; with fewer than three examinations, those of the first.
    private static int[] FollowedBy(CaseGrid grid, LinkPath? path)
    {
        bool ReadAcross(int e, int t) => grid.Step(e, t) is { } step && IsAcross(step.Place);
        bool IsMeant(int t) => path is null || grid.Tracks[t].Path == path;
        int least = grid.Compared.Count < 3 ? 1 : 2;
        int[] examinations = grid.Compared.Count < 3 ? [.. grid.Compared.Take(1)] : [.. grid.Compared];
        return [.. Enumerable.Range(0, grid.Tracks.Count).Where(t => IsMeant(t) && examinations.Count(e => ReadAcross(e, t)) >= least)];
    }
}
