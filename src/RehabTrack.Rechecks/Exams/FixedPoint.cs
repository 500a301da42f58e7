using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Exams;

/// <summary>A fixed point of the ligament on that day's tape: it anchors the tape, whatever the levels read.</summary>
/// <param name="Kind">Which point.</param>
/// <param name="Level">Distance distal to the examination's landmark, 0 to 60 cm.</param>
public readonly record struct FixedPoint(FixedPointKind Kind, Centimetres Level)
{
    /// <summary>Where a point was seen, cm; null when it was not.</summary>
    /// <param name="points">The points of one examination.</param>
    /// <param name="kind">Which point.</param>
    public static double? LevelOf(IEnumerable<FixedPoint> points, FixedPointKind kind) =>
        points.Where(point => point.Kind == kind).Select(point => (double?)point.Level.Value).FirstOrDefault();
}
