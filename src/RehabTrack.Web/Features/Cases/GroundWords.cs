using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Cases;

/// <summary>The words of what a verdict rests on.</summary>
public static class GroundWords
{
    /// <summary>The rows of the trend table that decide a verdict.</summary>
    public static IReadOnlyList<string> Deciding { get; } =
    ["windowExaminations", "slowestAcceptableLogPer60Days", "worseningZ", "healingZ", "stallZ", "acutePhaseDays", "targetFraction"];

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
