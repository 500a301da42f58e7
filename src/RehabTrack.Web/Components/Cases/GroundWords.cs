using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Cases;

/// <summary>The words of what a verdict rests on.</summary>
public static class GroundWords
{
    /// <summary>
    /// The rows of the trend table that decide a verdict: with the guard of its measure, and with the rates of trot and canter where they
    /// are not that of walk.
    /// </summary>
    /// <param name="measure">The measure that speaks; null when none does.</param>
    /// <param name="settings">The thresholds in force.</param>
    public static IReadOnlyList<string> DecidingOf(Measure? measure, TrendSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        bool isOneRate =
            settings.SlowestAcceptableAtTrotLogPer60Days == settings.SlowestAcceptableLogPer60Days
            && settings.SlowestAcceptableAtCanterLogPer60Days == settings.SlowestAcceptableLogPer60Days;
        string[] rates = isOneRate ? [] : ["slowestAcceptableAtTrotLogPer60Days", "slowestAcceptableAtCanterLogPer60Days"];
        string[] guards = measure switch
        {
            Measure.LesionVolume => ["guardVolumeCm3"],
            Measure.LesionArea => ["guardAreaCm2"],
            Measure.Thickness or Measure.ThicknessExcess or Measure.ThicknessAboveOwn => ["guardThicknessCm"],
            Measure.LesionPercent or Measure.Grades or null => [],
        };
        return
        [
            "windowExaminations",
            "slowestAcceptableLogPer60Days",
            .. rates,
            "worseningZ",
            "healingZ",
            "stallZ",
            .. guards,
            "acutePhaseDays",
            "targetFraction",
        ];
    }

    /// <summary>The rule that spoke, in a sentence.</summary>
    public static string RuleOf(VerdictReason reason) =>
        CasePage.ResourceManager.GetString($"Rule_{reason}", TextCulture.Default)
        ?? throw new ArgumentOutOfRangeException(nameof(reason), reason, "The rule has no text.");

    /// <summary>A value of a measure with its unit.</summary>
    public static string Value(Measure measure, double value) =>
        measure switch
        {
            Measure.LesionVolume => Figures.Volume(new CubicCentimetres(value)),
            Measure.LesionArea => Figures.Area(new SquareCentimetres(value)),
            Measure.LesionPercent => Figures.ExactPercent(new Percent(value)),
            Measure.Thickness or Measure.ThicknessExcess or Measure.ThicknessAboveOwn => Figures.Length(new Centimetres(value)),
            Measure.Grades => Figures.Number(value, "0"),
        };

    /// <summary>What part an examination has in the verdict.</summary>
    public static string RoleOf(SeriesPoint point)
    {
        ArgumentNullException.ThrowIfNull(point);
        return (point.InWindow, point.InTrend, point.Complete) switch
        {
            (true, _, true) => CasePage.CountsDecides,
            (true, _, false) => CasePage.CountsDecidesIncomplete,
            (false, true, _) => CasePage.CountsCourse,
            (false, false, _) => CasePage.CountsNot,
        };
    }
}
