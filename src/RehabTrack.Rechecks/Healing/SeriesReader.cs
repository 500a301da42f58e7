using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Healing;

/// <summary>Reads the measures of a lesion, or of a case, off the grid.</summary>
internal static class SeriesReader
{
    private const double NormalQuantile = 1.959963984540054;

    /// <summary>The measures that can speak, in the order in which they are asked: volume, area, share, thickness above a sound one, thickness, grades.</summary>
    /// <param name="grid">The case.</param>
    /// <param name="lesion">The lesion, or all.</param>
    /// <param name="trend">Indices of the examinations in the trend.</param>
    public static IReadOnlyList<MeasureSeries> Read(CaseGrid grid, LesionGrid lesion, IReadOnlyList<int> trend)
    {
        List<MeasureSeries> series = [];
        // Where no examination ever showed a lesion, "no lesion" is no progress to speak of: thickness and grades speak instead.
        int[] lesionTracks = [.. Enumerable.Range(0, grid.Tracks.Count).Where(lesion.HasLesionEver)];
        if (lesionTracks.Length > 0)
        {
            Add(series, Measure.LesionVolume, Volumes(grid, lesion));
            Add(series, Measure.LesionArea, Areas(grid, lesion, lesionTracks, trend));
            Add(series, Measure.LesionPercent, Shares(grid, lesionTracks, trend));
        }

        int[] places = lesionTracks.Length > 0 ? lesionTracks : [.. Enumerable.Range(0, grid.Tracks.Count)];
        Add(
            series,
            Measure.ThicknessExcess,
            grid.Course.OtherLimb == OtherLimb.HasLesion ? [] : Excesses(grid, places, trend, t => OtherLimbThicknesses(grid, t))
        );
        Add(series, Measure.ThicknessAboveOwn, Excesses(grid, places, trend, t => SoundThicknesses(grid, t)));
        Add(series, Measure.Thickness, Thicknesses(grid, places, trend));
        Add(series, Measure.Grades, Grades(grid, places, trend));
        return series;
    }

    private static void Add(List<MeasureSeries> series, Measure measure, IReadOnlyList<MeasuredPoint> points)
    {
        if (points.Count > 0)
        {
            series.Add(new MeasureSeries(measure, points));
        }
    }

    private static List<MeasuredPoint> Volumes(CaseGrid grid, LesionGrid lesion)
    {
        List<MeasuredPoint> points = [];
        for (int e = 0; e < grid.Examinations.Count; e++)
        {
            if (lesion.VolumeAt(e) is not { } figure)
            {
                continue;
            }

            // A volume that cannot be told from none stands at the edge of what can be measured, with the error of that edge.
            double size = Math.Max(figure.Volume, 2 * figure.StandardError);
            double error = figure.StandardError / size;
            points.Add(
                PointOf(grid, e) with
                {
                    Value = figure.Volume,
                    Y = Math.Log(size),
                    StandardDeviation = error,
                    Lower95 = figure.IsMeasurable ? figure.Volume * Math.Exp(-NormalQuantile * error) : 0,
                    Upper95 = figure.IsMeasurable
                        ? figure.Volume * Math.Exp(NormalQuantile * error)
                        : figure.Volume + (NormalQuantile * figure.StandardError),
                    IsNotMeasurable = !figure.IsMeasurable,
                }
            );
        }

        return points;
    }

    private static List<MeasuredPoint> Areas(CaseGrid grid, LesionGrid lesion, int[] tracks, IReadOnlyList<int> trend)
    {
        if (Worst(tracks, trend, (e, t) => lesion.Cell(e, t).IsKnown ? lesion.Cell(e, t).Area : null) is not { } track)
        {
            return [];
        }

        WorkingScale scale = grid.Error.LesionAreaScale;
        return PointsOf(
            grid,
            scale,
            e => lesion.Cell(e, track) is { IsKnown: true } cell ? (cell.Area, cell.StandardDeviation) : null,
            grid.Error.SharedGainLog
        );
    }

    private static List<MeasuredPoint> Shares(CaseGrid grid, int[] tracks, IReadOnlyList<int> trend)
    {
        double? ShareAt(int e, int t) => grid.Step(e, t)?.Place.LesionPercent?.Value;
        if (Worst(tracks, trend, ShareAt) is not { } track)
        {
            return [];
        }

        return PointsOf(
            grid,
            grid.Error.LesionPercentScale,
            e =>
                grid.Step(e, track) is { Place.LesionPercent: { } share } step
                    ? (share.Value, grid.Error.OfLesionPercent(share, step.Place.Part, grid.OtherMeasurer(e, track)).Value)
                    : null,
            0
        );
    }

    private static List<MeasuredPoint> Thicknesses(CaseGrid grid, int[] tracks, IReadOnlyList<int> trend)
    {
        double? ThicknessAt(int e, int t) => grid.Step(e, t)?.Place.Thickness?.Value;
        if (Worst(tracks, trend, ThicknessAt) is not { } track)
        {
            return [];
        }

        return PointsOf(
            grid,
            grid.Error.ThicknessScale,
            e =>
                grid.Step(e, track)?.Place.Thickness is { } thickness
                    ? (thickness.Value, grid.Error.OfThickness(thickness, grid.OtherMeasurer(e, track)).Value)
                    : null,
            0
        );
    }

    private static IEnumerable<double> OtherLimbThicknesses(CaseGrid grid, int track) =>
        grid.Compared.Select(e => grid.Step(e, track)?.Place.OtherLimbThickness?.Value).OfType<double>();

    // What the same place measured before the injury. A place that showed a lesion then was not sound.
    private static IEnumerable<double> SoundThicknesses(CaseGrid grid, int track) =>
        grid
            .Compared.Where(e => grid.Examinations[e].Date < grid.Course.Onset)
            .Select(e => grid.Step(e, track)?.Place)
            .Where(place => place is { IsAbnormal: false })
            .Select(place => place!.Thickness?.Value)
            .OfType<double>();

    // The sound reading is shared by all examinations: it moves the whole course, and adds no scatter from one to the next.
    private static List<MeasuredPoint> Excesses(
        CaseGrid grid,
        int[] tracks,
        IReadOnlyList<int> trend,
        Func<int, IEnumerable<double>> soundAt
    )
    {
        double? ThicknessAt(int e, int t) => grid.Step(e, t)?.Place.Thickness?.Value;
        if (Worst(tracks, trend, ThicknessAt) is not { } track || soundAt(track).ToArray() is not { Length: > 0 } sound)
        {
            return [];
        }

        Centimetres reference = new(sound.Average());
        double soundError = grid.Error.OfThickness(reference, otherMeasurer: false).Value / Math.Sqrt(sound.Length);
        // Logarithmic well above what can be told from none, straight below.
        WorkingScale scale = new(1, 2 * grid.Error.OfThickness(reference, otherMeasurer: false).Value);
        List<MeasuredPoint> points = [];
        for (int e = 0; e < grid.Examinations.Count; e++)
        {
            if (grid.Step(e, track)?.Place.Thickness is not { } thickness)
            {
                continue;
            }

            double excess = (thickness - reference).Value;
            double error = grid.Error.OfThickness(thickness, grid.OtherMeasurer(e, track)).Value;
            double whole = Math.Sqrt((error * error) + (soundError * soundError));
            points.Add(
                PointOf(grid, e) with
                {
                    Value = Math.Max(0, excess),
                    Y = scale.ToScale(excess),
                    StandardDeviation = scale.StandardDeviation(excess, error),
                    Lower95 = Math.Max(0, excess - (NormalQuantile * whole)),
                    Upper95 = Math.Max(0, excess) + (NormalQuantile * whole),
                    IsNotMeasurable = excess < 2 * whole,
                }
            );
        }

        // A level that was never thicker than the sound one has nothing to lose: its excess says nothing.
        return points.Find(point => trend.Contains(point.Examination)) is { IsNotMeasurable: false } ? points : [];
    }

    // Fibre alignment speaks where it was graded; echogenicity agrees poorly between readers and speaks only where nothing else does.
    private static List<MeasuredPoint> Grades(CaseGrid grid, int[] tracks, IReadOnlyList<int> trend)
    {
        List<MeasuredPoint> fibre = Grades(grid, tracks, trend, place => place.FibreAlignment);
        return fibre.Count >= Math.Min(2, trend.Count) && fibre.Count > 0
            ? fibre
            : Grades(grid, tracks, trend, place => place.Echogenicity);
    }

    private static List<MeasuredPoint> Grades(CaseGrid grid, int[] tracks, IReadOnlyList<int> trend, Func<Place, Grade?> gradeOf)
    {
        // Grades of different scales are never compared: the scale of the latest examination in the trend stands.
        string? scale = trend.Reverse().SelectMany(e => tracks.Select(t => GradeAt(e, t)?.Scale.Id)).FirstOrDefault(id => id is not null);
        Grade? GradeAt(int e, int t) => grid.Step(e, t) is { } step ? gradeOf(step.Place) : null;
        double? ValueAt(int e, int t) =>
            GradeAt(e, t) is { } grade && string.Equals(grade.Scale.Id, scale, StringComparison.Ordinal) ? grade.Value : null;
        if (scale is null || Worst(tracks, trend, ValueAt) is not { } track)
        {
            return [];
        }

        List<MeasuredPoint> points = [];
        for (int e = 0; e < grid.Examinations.Count; e++)
        {
            if (ValueAt(e, track) is { } value)
            {
                Grade grade = GradeAt(e, track)!;
                points.Add(
                    PointOf(grid, e) with
                    {
                        Value = value,
                        Y = value,
                        StandardDeviation = 1,
                        Lower95 = Math.Max(grade.Scale.Lowest, value - 1),
                        Upper95 = Math.Min(grade.Scale.Highest, value + 1),
                    }
                );
            }
        }

        return points;
    }

    // The track with the largest mean over the trend, among those read often enough to speak; never the one with the largest single value.
    private static int? Worst(int[] tracks, IReadOnlyList<int> trend, Func<int, int, double?> valueAt)
    {
        int? worst = null;
        (int Count, double Mean) best = (0, 0);
        foreach (int track in tracks)
        {
            double[] values = [.. trend.Select(e => valueAt(e, track)).OfType<double>()];
            if (values.Length == 0)
            {
                continue;
            }

            (int Count, double Mean) candidate = (Math.Min(values.Length, Math.Min(3, trend.Count)), values.Average());
            if (candidate.Count > best.Count || (candidate.Count == best.Count && candidate.Mean > best.Mean))
            {
                (worst, best) = (track, candidate);
            }
        }

        return worst;
    }

    private static List<MeasuredPoint> PointsOf(
        CaseGrid grid,
        WorkingScale scale,
        Func<int, (double Value, double StandardDeviation)?> read,
        double gain
    )
    {
        List<MeasuredPoint> points = [];
        for (int e = 0; e < grid.Examinations.Count; e++)
        {
            if (read(e) is not { } figure)
            {
                continue;
            }

            double y = scale.ToScale(figure.Value);
            double own = scale.StandardDeviation(figure.Value, figure.StandardDeviation);
            double shared = scale.OfLogError(figure.Value, gain);
            double error = Math.Max(Math.Sqrt((own * own) + (shared * shared)), 1e-9);
            points.Add(
                PointOf(grid, e) with
                {
                    Value = figure.Value,
                    Y = y,
                    StandardDeviation = error,
                    Lower95 = Math.Max(0, scale.FromScale(y - (NormalQuantile * error))),
                    Upper95 = scale.FromScale(y + (NormalQuantile * error)),
                    IsNotMeasurable = figure.Value < 2 * figure.StandardDeviation,
                }
            );
        }

        return points;
    }

    private static MeasuredPoint PointOf(CaseGrid grid, int examination) =>
        new()
        {
            Examination = examination,
            ExaminationId = grid.Examinations[examination].Id,
            Date = grid.Examinations[examination].Date,
            Value = 0,
            Y = 0,
            StandardDeviation = 1,
            Lower95 = 0,
            Upper95 = 0,
            IsNotMeasurable = false,
        };
}
