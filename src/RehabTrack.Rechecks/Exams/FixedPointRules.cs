using System.Globalization;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Exams;

/// <summary>What the fixed points of one examination must keep to: on the tape, and in the order in which they lie in the limb.</summary>
public static class FixedPointRules
{
    private static readonly ReferenceTable Limits = ReferenceTable.Load("limits");

    /// <summary>The field of a fixed point: its column in files.</summary>
    public static string FieldOf(FixedPointKind kind) =>
        kind switch
        {
            FixedPointKind.Origin => "origin_cm",
            FixedPointKind.Division => "division_cm",
            FixedPointKind.MedialInsertion => "medial_insertion_cm",
            FixedPointKind.LateralInsertion => "lateral_insertion_cm",
        };

    /// <summary>All that is wrong with the fixed points, by field.</summary>
    /// <param name="points">The points, at most one of a kind, cm.</param>
    public static IReadOnlyList<Problem> Check(IReadOnlyList<FixedPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        double lowest = Limits["lowestLevelCm"];
        double highest = Limits["highestLevelCm"];
        List<Problem> problems =
        [
            .. points
                .Where(point => !(point.Level.Value >= lowest && point.Level.Value <= highest))
                .Select(point => new Problem(
                    FieldOf(point.Kind),
                    "level-out-of-range",
                    Text(point.Level.Value),
                    Text(lowest),
                    Text(highest)
                )),
        ];
        // The insertions lie side by side; origin, division and insertion one below the other.
        foreach (FixedPoint above in points)
        {
            foreach (FixedPoint below in points.Where(point => RankOf(point.Kind) > RankOf(above.Kind) && point.Level <= above.Level))
            {
                problems.Add(new Problem(FieldOf(below.Kind), "fixed-point-order", Text(below.Level.Value), Text(above.Level.Value)));
            }
        }

        return problems;
    }

    private static int RankOf(FixedPointKind kind) =>
        kind switch
        {
            FixedPointKind.Origin => 0,
            FixedPointKind.Division => 1,
            FixedPointKind.MedialInsertion or FixedPointKind.LateralInsertion => 2,
        };

    private static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);
}
