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
        double? Level(FixedPointKind kind) =>
            points.Where(point => point.Kind == kind).Select(point => (double?)point.Level.Value).FirstOrDefault();
        record.OriginCm = Level(FixedPointKind.Origin);
        record.DivisionCm = Level(FixedPointKind.Division);
        record.MedialInsertionCm = Level(FixedPointKind.MedialInsertion);
        record.LateralInsertionCm = Level(FixedPointKind.LateralInsertion);
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
