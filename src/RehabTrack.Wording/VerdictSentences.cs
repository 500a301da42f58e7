using System.Globalization;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Wording;

/// <summary>A verdict in one sentence with its figures, and the line of figures it rests on.</summary>
public static class VerdictSentences
{
    /// <summary>The verdict in one sentence, by the rule that spoke.</summary>
    public static string Headline(Trend trend, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(trend);
        string reason = trend.Reason.ToString();
        string? change = trend.ChangePercent is { } known ? Figures.SignedPercent(known, null, culture) : null;
        string variant =
            trend.Reason == VerdictReason.BelowAcceptableRate && change is not null && !IsWithinError(trend) ? "_Changed"
            : HasTurned(trend) && Has($"{reason}_Turned", culture) ? "_Turned"
            : change is null && Has($"{reason}_NoChange", culture) ? "_NoChange"
            : string.Empty;
        SeriesPoint? last = trend.Series.LastOrDefault(point => point.InTrend) ?? trend.Series.LastOrDefault();
        SeriesPoint? first = trend.Series.FirstOrDefault(point => point.InTrend);
        return Format(
            Text(reason + variant, culture),
            culture,
            trend.Measure is { } measure ? Text($"Subject_{measure}", culture) : string.Empty,
            Figures.Date(trend.Since, null, culture),
            Figures.Date(last?.Date, null, culture),
            change,
            Figures.PlusMinusPercent(ErrorOf(trend), null, culture),
            trend.Window is { } window ? Figures.Percent(new Percent(Math.Abs(window.RatePercent)), null, culture) : null,
            first is { Value: > 0 } && last is not null
                ? Figures.Percent(new Percent(100 * last.Value / first.Value), null, culture)
                : null,
            Figures.Date(first?.Date, null, culture),
            CountWord(Math.Max(2, trend.Series.Count(point => point.InWindow) - 1), culture)
        );
    }

    // The latest step goes against the slope of the window: left unsaid, the sentence would be taken for it.
    private static bool HasTurned(Trend trend) =>
        trend is { Window: { } window }
        && trend.Series.Where(point => point.InWindow).Select(point => point.Value).ToArray() is [.., { } before, { } latest]
        && (window.LogPer60Days > 0 ? latest < before : latest > before);

    /// <summary>
    /// The figures the verdict rests on: measure, examinations, rate with its interval, and how many more examinations would settle it.
    /// </summary>
    public static string Basis(Trend trend, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(trend);
        SeriesPoint[] counted = [.. trend.Series.Where(point => point.InWindow)];
        if (counted.Length == 0)
        {
            counted = [.. trend.Series.Where(point => point.InTrend)];
        }

        string figures =
            trend.Measure is { } measure && counted.Length > 0
                ? FiguresOf(trend, measure, counted, culture)
                : Text("Basis_Nothing", culture);
        return Settling(trend, culture) is { } settling ? $"{figures} {settling}" : figures;
    }

    private static string FiguresOf(Trend trend, Measure measure, SeriesPoint[] counted, CultureInfo? culture) =>
        Format(
            Text(
                measure == Measure.Grades ? "Basis_Grades"
                    : trend.Window is null ? "Basis_One"
                    : "Basis",
                culture
            ),
            culture,
            Names.AsTitle(Names.Of(measure, culture), culture),
            counted.Length == 1 ? Text("Examinations_One", culture) : Format(Text("Examinations_Many", culture), culture, counted.Length),
            counted.Length == 1 ? Figures.Date(counted[0].Date, null, culture) : Figures.Dates(counted[0].Date, counted[^1].Date, culture),
            trend.Window is { } window ? Figures.SignedPercent(window.RatePercent, null, culture) : null,
            trend.Window is { } interval ? Figures.SignedPercents(interval.Lower95Percent, interval.Upper95Percent, culture) : null
        );

    /// <summary>How many more examinations would settle it, or what else would; null when it is settled.</summary>
    public static string? Settling(Trend trend, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(trend);
        return (trend.Verdict, trend.MoreExaminationsToSettle) switch
        {
            (not Verdict.NotYetReadable, _) => null,
            (_, 1) => Text("Settle_One", culture),
            (_, { } more) => Names.AsTitle(Format(Text("Settle_Many", culture), culture, CountWord(more, culture)), culture),
            (_, null) => Text(Has($"Settle_{trend.Reason}", culture) ? $"Settle_{trend.Reason}" : "Settle_Unknown", culture),
        };
    }

    private static bool IsWithinError(Trend trend) =>
        trend.ChangePercent <= trend.DetectableRisePercent && trend.ChangePercent >= trend.DetectableFallPercent;

    // The side on which the change lies.
    private static double? ErrorOf(Trend trend) => trend.ChangePercent < 0 ? trend.DetectableFallPercent : trend.DetectableRisePercent;

    private static string CountWord(int count, CultureInfo? culture) =>
        Verdicts.ResourceManager.GetString($"Count_{count.ToString(CultureInfo.InvariantCulture)}", culture ?? TextCulture.Default)
        ?? count.ToString(culture ?? TextCulture.Default);

    private static bool Has(string key, CultureInfo? culture) =>
        Verdicts.ResourceManager.GetString(key, culture ?? TextCulture.Default) is not null;

    private static string Text(string key, CultureInfo? culture) =>
        Verdicts.ResourceManager.GetString(key, culture ?? TextCulture.Default)
        ?? throw new ArgumentOutOfRangeException(nameof(key), key, "Verdicts has no such text.");

    private static string Format(string text, CultureInfo? culture, params object?[] arguments) =>
        string.Format(culture ?? TextCulture.Default, text, arguments);
}
