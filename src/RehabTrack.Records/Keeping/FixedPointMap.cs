using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Records.Keeping;

/// <summary>Between the fixed points of an examination as kept, one column a kind, and as the heart reads them.</summary>
internal static class FixedPointMap
{
    public static IReadOnlyList<FixedPoint> Of(ExaminationRecord record) =>
        [
            .. Enum.GetValues<FixedPointKind>()
                .Select(kind => (Kind: kind, Level: LevelOf(record, kind)))
                .Where(point => point.Level is not null)
                .Select(point => new FixedPoint(point.Kind, new Centimetres(point.Level!.Value))),
        ];

    public static void Apply(ExaminationRecord record, IReadOnlyList<FixedPoint> points)
    {
        record.OriginCm = FixedPoint.LevelOf(points, FixedPointKind.Origin);
        record.DivisionCm = FixedPoint.LevelOf(points, FixedPointKind.Division);
        record.MedialInsertionCm = FixedPoint.LevelOf(points, FixedPointKind.MedialInsertion);
        record.LateralInsertionCm = FixedPoint.LevelOf(points, FixedPointKind.LateralInsertion);
    }

    private static double? LevelOf(ExaminationRecord record, FixedPointKind kind) =>
        kind switch
        {
            FixedPointKind.Origin => record.OriginCm,
            FixedPointKind.Division => record.DivisionCm,
            FixedPointKind.MedialInsertion => record.MedialInsertionCm,
            FixedPointKind.LateralInsertion => record.LateralInsertionCm,
        };
}
