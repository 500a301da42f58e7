namespace RehabTrack.Web.Features.Thresholds;

/// <summary>The thresholds that a practice may set, as the form groups them.</summary>
public static class ThresholdFields
{
    /// <summary>Those of the verdict.</summary>
    public static IReadOnlyList<ThresholdField> OfVerdict { get; } =
    [
        new("trend.windowExaminations"),
        new("trend.acutePhaseDays"),
        new("trend.targetFraction", ThresholdUnit.Percent),
        new("trend.worseningZ"),
        new("trend.healingZ"),
        new("trend.stallZ"),
    ];

    /// <summary>The slowest acceptable rates, by what the plan permits.</summary>
    public static IReadOnlyList<ThresholdField> OfRate { get; } =
    [
        new("trend.slowestAcceptableLogPer60Days", ThresholdUnit.PercentFall),
        new("trend.slowestAcceptableAtTrotLogPer60Days", ThresholdUnit.PercentFall),
        new("trend.slowestAcceptableAtCanterLogPer60Days", ThresholdUnit.PercentFall),
    ];

    /// <summary>The smallest rises, and what is told of single levels.</summary>
    public static IReadOnlyList<ThresholdField> OfSize { get; } =
    [
        new("trend.guardAreaCm2"),
        new("trend.guardVolumeCm3"),
        new("trend.guardThicknessCm"),
        new("trend.amberLigamentRise", ThresholdUnit.Percent),
        new("trend.redLigamentRise", ThresholdUnit.Percent),
        new("trend.otherLimbEnlargement", ThresholdUnit.Percent),
        new("linking.uncertainBelow", ThresholdUnit.Percent),
    ];

    /// <summary>All of them.</summary>
    public static IReadOnlyList<ThresholdField> All { get; } = [.. OfVerdict, .. OfRate, .. OfSize];
}
