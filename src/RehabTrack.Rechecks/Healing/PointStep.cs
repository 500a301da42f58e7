namespace RehabTrack.Rechecks.Healing;

/// <summary>The step from one point to the next, judged against the error of both.</summary>
/// <param name="From">The earlier point.</param>
/// <param name="To">The later point.</param>
/// <param name="InsideError">Whether measurement alone may have made the difference.</param>
public sealed record PointStep(SeriesPoint From, SeriesPoint To, bool InsideError)
{
    /// <summary>The change, % of the earlier value; null when that is 0.</summary>
    public double? ChangePercent => From.Value > 0 ? 100 * ((To.Value / From.Value) - 1) : null;

    /// <summary>The steps of a series. The factor is that of neighbouring examinations, for as many rechecks as there are.</summary>
    /// <param name="series">The points in order of date; fewer than two have no step.</param>
    public static IReadOnlyList<PointStep> Of(IReadOnlyList<SeriesPoint> series)
    {
        ArgumentNullException.ThrowIfNull(series);
        if (series.Count < 2)
        {
            return [];
        }

        double factor = ComparisonFactors.Neighbouring(series.Count - 1) / ComparisonFactors.Single;
        return
        [
            .. series.Zip(
                series.Skip(1),
                (from, to) =>
                {
                    bool up = to.Value > from.Value;
                    double first = up ? from.Upper95 - from.Value : from.Value - from.Lower95;
                    double second = up ? to.Value - to.Lower95 : to.Upper95 - to.Value;
                    return new PointStep(
                        from,
                        to,
                        Math.Abs(to.Value - from.Value) <= factor * Math.Sqrt((first * first) + (second * second))
                    );
                }
            ),
        ];
    }
}
