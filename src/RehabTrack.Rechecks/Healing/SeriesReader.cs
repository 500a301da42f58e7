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
            Add(series, Measure.LesionVolume, Volumes(grid, lesion, trend));
            Add(series, Measure.LesionArea, Areas(grid, lesion, lesionTracks, trend));
            Add(series, Measure.LesionPercent, Shares(grid, lesion, lesionTracks, trend));
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

    private static List<MeasuredPoint> Volumes(CaseGrid grid, LesionGrid lesion, IReadOnlyList<int> trend)
    {
        return Gathered(grid, trend, null, PointAt);

        MeasuredPoint? PointAt(int e, int reference)
        {
            if (lesion.VolumeAt(e) is not { } figure)
            {
                return null;
            }

            // A volume that cannot be told from none stands at the edge of what can be measured, with the error of that edge.
            double size = Math.Max(figure.Volume, 2 * figure.StandardError);
            double standardError = lesion.VolumeAt(e, reference)!.Value.StandardError;
            double error = standardError / size;
            return PointOf(grid, e) with
            {
                Value = figure.Volume,
                Y = Math.Log(size),
                StandardDeviation = error,
                Lower95 = figure.IsMeasurable ? figure.Volume * Math.Exp(-NormalQuantile * error) : 0,
                Upper95 = figure.IsMeasurable
                    ? figure.Volume * Math.Exp(NormalQuantile * error)
                    : figure.Volume + (NormalQuantile * standardError),
                IsNotMeasurable = !figure.IsMeasurable,
            };
        }
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
            trend,
            track,
            scale,
            (e, reference) => lesion.Cell(e, track) is { IsKnown: true } cell ? (cell.Area, lesion.DeviationAt(e, track, reference)) : null,
            grid.Error.SharedGainLog
        );
    }

    private static List<MeasuredPoint> Shares(CaseGrid grid, LesionGrid lesion, int[] tracks, IReadOnlyList<int> trend)
    {
        double? ShareAt(int e, int t) => lesion.Cell(e, t).Share;
        if (Worst(tracks, trend, ShareAt) is not { } track)
        {
            return [];
        }

        return PointsOf(
            grid,
            trend,
            track,
            grid.Error.LesionPercentScale,
            (e, reference) =>
                ShareAt(e, track) is { } share
                    ? (
                        share,
                        grid.Error.OfLesionPercent(
                            new Percent(share),
                            grid.Step(e, track)!.Place.Part,
                            grid.OtherMeasurer(e, track, reference)
                        ).Value
                    )
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
            trend,
            track,
            grid.Error.ThicknessScale,
            (e, reference) =>
                grid.Step(e, track)?.Place.Thickness is { } thickness
                    ? (thickness.Value, grid.Error.OfThickness(thickness, grid.OtherMeasurer(e, track, reference)).Value)
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
        List<MeasuredPoint> points = Gathered(grid, trend, track, PointAt);

        // A level that was never thicker than the sound one has nothing to lose: its excess says nothing.
        return points.Find(point => trend.Contains(point.Examination)) is { IsNotMeasurable: false } ? points : [];

        MeasuredPoint? PointAt(int e, int other)
        {
            if (grid.Step(e, track)?.Place.Thickness is not { } thickness)
            {
                return null;
            }

            double excess = (thickness - reference).Value;
            double error = grid.Error.OfThickness(thickness, grid.OtherMeasurer(e, track, other)).Value;
            double whole = Math.Sqrt((error * error) + (soundError * soundError));
            return PointOf(grid, e) with
            {
                Value = Math.Max(0, excess),
                Y = scale.ToScale(excess),
                StandardDeviation = scale.StandardDeviation(excess, error),
                Lower95 = Math.Max(0, excess - (NormalQuantile * whole)),
                Upper95 = Math.Max(0, excess) + (NormalQuantile * whole),
                IsNotMeasurable = excess < 2 * whole,
            };
        }
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
        IReadOnlyList<int> trend,
        int track,
        WorkingScale scale,
        Func<int, int, (double Value, double StandardDeviation)?> read,
        double gain
    )
    {
        return Gathered(grid, trend, track, PointAt);

        MeasuredPoint? PointAt(int e, int reference)
        {
            if (read(e, reference) is not { } figure)
            {
                return null;
            }

            double y = scale.ToScale(figure.Value);
            double own = scale.StandardDeviation(figure.Value, figure.StandardDeviation);
            double shared = scale.OfLogError(figure.Value, gain);
            double error = Math.Max(Math.Sqrt((own * own) + (shared * shared)), 1e-9);
            return PointOf(grid, e) with
            {
                Value = figure.Value,
                Y = y,
                StandardDeviation = error,
                Lower95 = Math.Max(0, scale.FromScale(y - (NormalQuantile * error))),
                Upper95 = scale.FromScale(y + (NormalQuantile * error)),
                IsNotMeasurable = figure.Value < 2 * figure.StandardDeviation,
            };
        }
    }

    // The point of each examination beside itself, and, where several persons measured, what is needed to lay it beside another.
    private static List<MeasuredPoint> Gathered(CaseGrid grid, IReadOnlyList<int> trend, int? track, Func<int, int, MeasuredPoint?> read)
    {
        List<MeasuredPoint> points = [];
        for (int e = 0; e < grid.Examinations.Count; e++)
        {
            if (read(e, e) is { } point)
            {
                points.Add(point);
            }
        }

        if (grid.HasOneMeasurer || points.Count == 0)
        {
            return points;
        }

        MeasurerErrors measurers = new(grid, track, (e, reference) => read(e, reference)!.StandardDeviation);
        MeasuredPoint[] known = [.. points.Select(point => point with { Measurers = measurers })];
        MeasuredPoint[] counted = Array.FindAll(known, point => trend.Contains(point.Examination));
        int usual = MeasuredLine.UsualOf(counted.Length > 0 ? counted : known).Examination;
        return
        [
            .. known.Select(point =>
                read(point.Examination, usual) is { } band ? point with { Lower95 = band.Lower95, Upper95 = band.Upper95 } : point
            ),
        ];
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
