namespace RehabTrack.Rechecks.Healing;

/// <summary>The line through the points of a measure, some of which another person may have measured.</summary>
internal static class MeasuredLine
{
    /// <summary>
    /// The point of the person who measured most of them; the earliest such point, and the earlier person on a tie. One without a name
    /// only where nobody is named.
    /// </summary>
    /// <param name="points">One or more.</param>
    public static MeasuredPoint UsualOf(ReadOnlySpan<MeasuredPoint> points)
    {
        MeasuredPoint usual = points[0];
        int most = 0;
        foreach (MeasuredPoint point in points)
        {
            int alike = 0;
            foreach (MeasuredPoint other in points)
            {
                alike += point.IsMeasurerNamed && point.SharesMeasurerWith(other) ? 1 : 0;
            }

            (usual, most) = alike > most ? (point, alike) : (usual, most);
        }

        return usual;
    }

    /// <summary>The points as they weigh beside the usual one.</summary>
    public static MeasuredPoint[] Weighed(MeasuredPoint[] points) =>
        points is [{ Measurers: not null }, ..] && UsualOf(points) is var usual
            ? [.. points.Select(point => point with { StandardDeviation = point.DeviationFrom(usual) })]
            : points;

    /// <summary>
    /// The line by weighted least squares, in days from the first point; null below two days. Where another person measured some, these
    /// weigh less, and the standard error of the slope counts that what sets a person apart is the same at each of that person’s examinations.
    /// </summary>
    public static WeightedLine? Through(ReadOnlySpan<MeasuredPoint> points)
    {
        if (points.Length < 2)
        {
            return null;
        }

        // A case has a few dozen examinations at most; the general case is for callers that give more.
        Span<double> figures = points.Length <= 64 ? stackalloc double[3 * points.Length] : new double[3 * points.Length];
        Span<double> days = figures[..points.Length];
        Span<double> sizes = figures[points.Length..(2 * points.Length)];
        Span<double> deviations = figures[(2 * points.Length)..];
        MeasuredPoint usual = points[0].Measurers is null ? points[0] : UsualOf(points);
        for (int i = 0; i < points.Length; i++)
        {
            days[i] = points[i].Date.DayNumber - points[0].Date.DayNumber;
            sizes[i] = points[i].Y;
            deviations[i] = points[i].DeviationFrom(usual);
        }

        if (!days.ContainsAnyExcept(0))
        {
            return null;
        }

        WeightedLine line = WeightedLine.Through(days, sizes, deviations);
        return points[0].Measurers is null ? line : line with { SlopeStandardError = SlopeError(line, points, days, deviations) };
    }

    // The slope is Σ c·y with c = w·(t − mean)/Sxx. Each y has an error of its own, and the widening of one person on top: one unknown for
    // all that this person measured, so that it does not average out over them.
    private static double SlopeError(
        WeightedLine line,
        ReadOnlySpan<MeasuredPoint> points,
        ReadOnlySpan<double> days,
        ReadOnlySpan<double> deviations
    )
    {
        double spread = 1 / (line.SlopeStandardError * line.SlopeStandardError);
        double own = 0;
        double shared = 0;
        for (int i = 0; i < points.Length; i++)
        {
            double part = Part(i, days, deviations, line.MeanX, spread);
            own += part * part * points[i].StandardDeviation * points[i].StandardDeviation;
            for (int j = 0; j < points.Length; j++)
            {
                shared += points[i].SharesMeasurerWith(points[j])
                    ? part
                        * Widening(i, points, deviations)
                        * Part(j, days, deviations, line.MeanX, spread)
                        * Widening(j, points, deviations)
                    : 0;
            }
        }

        return Math.Sqrt(own + Math.Max(0, shared));

        static double Part(int i, ReadOnlySpan<double> days, ReadOnlySpan<double> deviations, double mean, double spread) =>
            (days[i] - mean) / (deviations[i] * deviations[i] * spread);

        static double Widening(int i, ReadOnlySpan<MeasuredPoint> points, ReadOnlySpan<double> deviations) =>
            Math.Sqrt(Math.Max(0, (deviations[i] * deviations[i]) - (points[i].StandardDeviation * points[i].StandardDeviation)));
    }
}
