using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Exams;

/// <summary>A fixed point of the ligament on that day's tape: it anchors the tape, whatever the levels read.</summary>
/// <param name="Kind">Which point.</param>
/// <param name="Level">Distance distal to the examination's landmark, 0 to 60 cm.</param>
public readonly record struct FixedPoint(FixedPointKind Kind, Centimetres Level);
