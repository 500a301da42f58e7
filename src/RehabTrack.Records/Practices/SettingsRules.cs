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
            .. SettingRanges.Check(settings).Select(problem => problem with { Field = $"settings.{problem.Field}" }),
            .. settings.Trend.RedLigamentRise <= settings.Trend.AmberLigamentRise
                ? [new Problem("settings.trend.redLigamentRise", "red-not-above-amber")]
                : Array.Empty<Problem>(),
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
}
