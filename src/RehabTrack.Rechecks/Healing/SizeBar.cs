namespace RehabTrack.Rechecks.Healing;

/// <summary>The size of an injury at one examination, for a reader without figures.</summary>
/// <param name="Date">The examination's date.</param>
/// <param name="Share">Its size as a share of the largest of the course, 0 to 1.</param>
/// <param name="IsWithinError">Whether measurement alone may have made the difference from the examination before; false for the first.</param>
public sealed record SizeBar(DateOnly Date, double Share, bool IsWithinError)
{
    /// <summary>
    /// The bars of a trend, by date; none where no size of the lesion itself speaks, or fewer than two examinations have it. Examinations
    /// that did not read every lesion level are left out: their size would look smaller than it is.
    /// </summary>
    /// <param name="trend">The trend of the case.</param>
    public static IReadOnlyList<SizeBar> Of(Trend trend)
    {
        ArgumentNullException.ThrowIfNull(trend);
        SeriesPoint[] points = [.. trend.Series.Where(point => point.Complete)];
        double largest = points.Select(point => point.Value).DefaultIfEmpty().Max();
        if (trend.Measure is not { } measure || !MeasureRules.IsOfLesion(measure) || points.Length < 2 || largest <= 0)
        {
            return [];
        }

        return
        [
            new SizeBar(points[0].Date, points[0].Value / largest, false),
            .. PointStep.Of(points).Select(step => new SizeBar(step.To.Date, step.To.Value / largest, step.InsideError)),
        ];
    }
}
