using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Suggestions;

/// <summary>Finds the worst level of a case and what it says over the examinations that decide.</summary>
internal static class LevelEvidenceReader
{
    // One-sided 95 % point of the normal distribution, as for the bound of a stall.
    private const double BoundZ = 1.6448536269514722;

    /// <summary>The level with the largest lesion at the start of the window, over the window; null below two examinations.</summary>
    public static LevelEvidence? Read(CaseGrid grid, LesionGrid lesions, Trend trend, MeasurementErrorSettings error)
    {
        SeriesPoint[] window = [.. trend.Series.Where(point => point.InWindow)];
        if (window.Length < 2)
        {
            return null;
        }

        int from = IndexOf(grid, window[0]);
        int to = IndexOf(grid, window[^1]);
        if (WorstTrack(grid, lesions, from, to) is not { } track)
        {
            return null;
        }

        Place before = grid.Step(from, track)!.Place;
        Place now = grid.Step(to, track)!.Place;
        int rechecks = trend.Series.Count(point => point.InTrend) - 1;
        // The dates are chosen as the trend chooses them: against the first examination, or against a later one.
        bool fromBaseline = trend.Series.First(point => point.InTrend) == window[0];
        double factor = fromBaseline ? ComparisonFactors.WithBaseline(rechecks) : ComparisonFactors.AnyTwo(rechecks);
        IReadOnlyList<SizeChange> changes = PlaceComparison.Between(before, now, error, grid.Course.Limb, factor);
        // The bound stands on the later value: compared backwards, what lies above it is what the true value may be at most.
        IReadOnlyList<SizeChange> bounds = PlaceComparison.Between(now, before, error, grid.Course.Limb, BoundZ);
        SizeChange? Change(MeasuredSize size) => changes.FirstOrDefault(change => change.Size == size);
        double? AtMost(SizeChange? change) =>
            change is { Before: > 0 } && bounds.First(bound => bound.Size == change.Size) is { } bound
                ? 100 * ((bound.DetectableAbove / change.Before) - 1)
                : null;
        SizeChange? lesion = Change(MeasuredSize.LesionArea) ?? Change(MeasuredSize.LesionPercent);
        SizeChange? ligament = Change(MeasuredSize.LigamentArea);
        return new LevelEvidence
        {
            TrackId = grid.Tracks[track].Id,
            Part = now.Part,
            Level = now.Level,
            From = grid.Examinations[from].Date,
            To = grid.Examinations[to].Date,
            Lesion = lesion,
            LesionAtMostPercent = AtMost(lesion),
            Ligament = ligament,
            LigamentAtMostPercent = AtMost(ligament),
            Echogenicity = OnOneScale(before.Echogenicity, now.Echogenicity),
            FibreAlignment = OnOneScale(before.FibreAlignment, now.FibreAlignment),
            EchogenicityNow = now.Echogenicity,
            FibreAlignmentNow = now.FibreAlignment,
        };
    }

    private static int IndexOf(CaseGrid grid, SeriesPoint point) =>
        Enumerable
            .Range(0, grid.Examinations.Count)
            .First(e => string.Equals(grid.Examinations[e].Id, point.ExaminationId, StringComparison.Ordinal));

    private static int? WorstTrack(CaseGrid grid, LesionGrid lesions, int from, int to)
    {
        int[] shown =
        [
            .. Enumerable
                .Range(0, grid.Tracks.Count)
                .Where(t => lesions.HasLesionEver(t) && grid.Step(from, t) is not null && grid.Step(to, t) is not null),
        ];
        return shown.Length == 0
            ? null
            : shown
                .OrderByDescending(t => lesions.Cell(from, t).Rank)
                .ThenByDescending(t => lesions.Cell(to, t).Rank)
                .ThenBy(t => t)
                .First();
    }

    private static (Grade Before, Grade Now)? OnOneScale(Grade? before, Grade? now) =>
        before is { } was && now is { } isNow && was.Scale == isNow.Scale ? (was, isNow) : null;
}
