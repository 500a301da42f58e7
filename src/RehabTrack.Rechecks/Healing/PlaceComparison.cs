using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Healing;

/// <summary>Compares one place at two dates.</summary>
public static class PlaceComparison
{
    /// <summary>
    /// The sizes that both dates have, in the order of <see cref="MeasuredSize"/>. Each is compared on its working scale: the smallest detectable
    /// change is <paramref name="factor"/> times the SD of the difference, the gain of each examination included where it does not cancel.
    /// </summary>
    /// <param name="before">The place at the earlier date.</param>
    /// <param name="now">The same place at the later date.</param>
    /// <param name="settings">The error of measurement.</param>
    /// <param name="limb">The limb.</param>
    /// <param name="factor">
    /// How many SDs of a difference are needed, above 0: one of <see cref="ComparisonFactors"/>, by how the two dates were chosen.
    /// </param>
    public static IReadOnlyList<SizeChange> Between(Place before, Place now, MeasurementErrorSettings settings, Limb limb, double factor)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(now);
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(factor);
        return [.. Differences(before, now, settings, limb).Select(difference => difference.Against(factor, null))];
    }

    /// <summary>The sizes that both dates have, with the error of their difference, in the order of <see cref="MeasuredSize"/>.</summary>
    internal static IEnumerable<SizeDifference> Differences(Place before, Place now, MeasurementErrorSettings settings, Limb limb)
    {
        MeasurementError error = new(settings, limb);
        bool other = IsOtherMeasurer(before, now);
        double gain = error.SharedGainLog;
        SizeDifference?[] differences =
        [
            Difference(
                MeasuredSize.LigamentArea,
                before.LigamentArea?.Value,
                now.LigamentArea?.Value,
                error.LigamentAreaScale,
                gain,
                (place, area, another) => error.OfLigamentArea(new SquareCentimetres(area), place.Part, another, place.Tracings).Value
            ),
            Difference(
                MeasuredSize.LesionArea,
                before.LesionArea.MeasuredArea?.Value,
                now.LesionArea.MeasuredArea?.Value,
                error.LesionAreaScale,
                gain,
                (place, area, another) => error.OfLesionArea(new SquareCentimetres(area), place.Part, another, place.Tracings).Value
            ),
            Difference(
                MeasuredSize.LesionPercent,
                before.LesionPercent?.Value,
                now.LesionPercent?.Value,
                error.LesionPercentScale,
                0,
                (place, share, another) => error.OfLesionPercent(new Percent(share), place.Part, another).Value
            ),
            Difference(
                MeasuredSize.Thickness,
                before.Thickness?.Value,
                now.Thickness?.Value,
                error.ThicknessScale,
                0,
                (_, length, another) => error.OfThickness(new Centimetres(length), another).Value
            ),
            Difference(
                MeasuredSize.Width,
                before.Width?.Value,
                now.Width?.Value,
                new WorkingScale(settings.WidthCv, settings.LengthFloorCm),
                0,
                (_, length, another) => error.OfWidth(new Centimetres(length), another).Value
            ),
        ];
        return differences.OfType<SizeDifference>();

        SizeDifference? Difference(
            MeasuredSize size,
            double? was,
            double? isNow,
            WorkingScale scale,
            double gainLog,
            Func<Place, double, bool, double> standardDeviation
        )
        {
            if (was is not { } earlier || isNow is not { } later)
            {
                return null;
            }

            double first = Variance(earlier, standardDeviation(before, earlier, false));
            double second = Variance(later, standardDeviation(now, later, other));
            return new SizeDifference(size, earlier, later, scale, Math.Sqrt(first + second));

            double Variance(double value, double sd)
            {
                double own = scale.SpreadOf(value, sd);
                double shared = scale.OfLogError(value, gainLog);
                return (own * own) + (shared * shared);
            }
        }
    }

    // Where nobody is named, the same person is taken, as in the trend.
    private static bool IsOtherMeasurer(Place before, Place now) =>
        CaseGrid.AreOthers(CaseGrid.MeasurersOf(before.Readings), CaseGrid.MeasurersOf(now.Readings));
}
