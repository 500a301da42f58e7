using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Practices;

/// <summary>What analysis settings must keep to, so that the computation stays defined.</summary>
internal static class SettingsRules
{
    public static IEnumerable<Problem> Check(AnalysisSettings settings) =>
        [
            .. Positive("ligamentAreaCv", settings.Error.LigamentAreaCv),
            .. Positive("lesionAreaCv", settings.Error.LesionAreaCv),
            .. Positive("areaFloorCm2", settings.Error.AreaFloorCm2),
            .. Positive("thicknessCv", settings.Error.ThicknessCv),
            .. Positive("widthCv", settings.Error.WidthCv),
            .. Positive("lengthFloorCm", settings.Error.LengthFloorCm),
            .. Positive("hindOriginFactor", settings.Error.HindOriginFactor),
            .. Positive("otherMeasurerFactor", settings.Error.OtherMeasurerFactor),
            .. NotNegative("sharedGainLog", settings.Error.SharedGainLog),
            .. Positive("tapeStandardDeviationCm", settings.Linking.TapeStandardDeviationCm),
            .. Positive("shiftStandardDeviationCm", settings.Linking.ShiftStandardDeviationCm),
            .. NotNegative("largestShiftCm", settings.Linking.LargestShiftCm),
            .. Positive("shiftStepCm", settings.Linking.ShiftStepCm),
            .. Share("uncertainBelow", settings.Linking.UncertainBelow),
            .. AtLeast("windowExaminations", settings.Trend.WindowExaminations, 2),
            .. Finite("slowestAcceptableLogPer60Days", settings.Trend.SlowestAcceptableLogPer60Days),
            .. Finite("slowestAcceptableAtTrotLogPer60Days", settings.Trend.SlowestAcceptableAtTrotLogPer60Days),
            .. Finite("slowestAcceptableAtCanterLogPer60Days", settings.Trend.SlowestAcceptableAtCanterLogPer60Days),
            .. Positive("otherLimbEnlargement", settings.Trend.OtherLimbEnlargement),
            .. Positive("worseningZ", settings.Trend.WorseningZ),
            .. Positive("healingZ", settings.Trend.HealingZ),
            .. Positive("stallZ", settings.Trend.StallZ),
            .. Positive("priorDegreesOfFreedom", settings.Trend.PriorDegreesOfFreedom),
            .. AtLeast("acutePhaseDays", settings.Trend.AcutePhaseDays, 0),
            .. AtLeast("provisionalBaselineDays", settings.Trend.ProvisionalBaselineDays, 0),
            .. Share("targetFraction", settings.Trend.TargetFraction),
            .. NotNegative("guardAreaCm2", settings.Trend.GuardAreaCm2),
            .. NotNegative("guardVolumeCm3", settings.Trend.GuardVolumeCm3),
            .. NotNegative("guardThicknessCm", settings.Trend.GuardThicknessCm),
            .. Positive("amberLigamentRise", settings.Trend.AmberLigamentRise),
            .. Positive("redLigamentRise", settings.Trend.RedLigamentRise),
            .. InRange("trotAfterDays", settings.Rules.TrotAfterDays),
            .. InRange("canterHighestGrade", settings.Rules.CanterHighestGrade),
            .. InRange("shockWaveDays", settings.Rules.ShockWaveDays),
        ];

    private static IEnumerable<Problem> InRange(string name, int value)
    {
        (int lowest, int highest) = RuleSettings.Ranges[name];
        return value >= lowest && value <= highest
            ? []
            : [new Problem($"settings.{name}", "rule-limit-out-of-range", RecordText.Of(lowest), RecordText.Of(highest))];
    }

    private static IEnumerable<Problem> Positive(string name, double value) =>
        double.IsFinite(value) && value > 0 ? [] : [Wrong(name, "setting-not-positive", value)];

    private static IEnumerable<Problem> NotNegative(string name, double value) =>
        double.IsFinite(value) && value >= 0 ? [] : [Wrong(name, "setting-negative", value)];

    private static IEnumerable<Problem> Share(string name, double value) =>
        value is >= 0 and <= 1 ? [] : [Wrong(name, "setting-not-a-share", value)];

    private static IEnumerable<Problem> Finite(string name, double value) =>
        double.IsFinite(value) ? [] : [Wrong(name, "setting-not-a-number", value)];

    private static IEnumerable<Problem> AtLeast(string name, int value, int least) =>
        value >= least ? [] : [new Problem($"settings.{name}", "setting-too-small", RecordText.Of(value), RecordText.Of(least))];

    private static Problem Wrong(string name, string code, double value) => new($"settings.{name}", code, RecordText.Of(value));
}
