using System.Xml.Linq;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Reports.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Healing;

/// <summary>The legend names only the marks that occur.</summary>
internal static class HealingLegend
{
    private const double SampleWidth = 26;

    public static (XElement Legend, double Height) Of(
        HealingChart chart,
        Measure measure,
        double? target,
        DecidingTrend? deciding,
        IReadOnlyList<PointStep> steps,
        double top
    )
    {
        XElement legend = Svg.Of("g", ("class", "legend"), ("aria-hidden", "true"));
        LegendRow row = new(chart.Width, chart.Small, SampleWidth + 6, top + chart.Small + 8);
        foreach ((string text, Func<double, double, IEnumerable<XElement>> mark) in Entries(chart, measure, target, deciding, steps))
        {
            (double x, double y) = row.Next(text);
            foreach (XElement part in mark(x, y - (chart.Small * 0.35)))
            {
                legend.Add(part);
            }

            legend.Add(Svg.Text(x + SampleWidth + 6, y, text, chart.Small, Palette.Soft));
        }

        return (legend, row.Y + 8);
    }

    private static IEnumerable<(string Text, Func<double, double, IEnumerable<XElement>> Mark)> Entries(
        HealingChart chart,
        Measure measure,
        double? target,
        DecidingTrend? deciding,
        IReadOnlyList<PointStep> steps
    )
    {
        double right = SampleWidth;
        yield return (
            Drawings.HealingLegendBand,
            (x, y) =>
                [
                    Svg.Of("rect", ("x", x), ("y", y - 6), ("width", right), ("height", 12), ("fill", Palette.Tint)),
                    Svg.Line(x + (right / 2), y - 6, x + (right / 2), y + 6, Palette.Accent, 1.3),
                    Dot(x + (right / 2), y, Palette.Accent, Palette.Accent),
                ]
        );
        if (steps.Any(step => step.InsideError))
        {
            yield return (
                Drawings.HealingLegendInside,
                (x, y) => [Svg.Line(x + 1, y, x + right, y, Palette.Accent, 2, "0.1 6").With(("stroke-linecap", "round"))]
            );
        }

        if (chart.Trend.Series.Any(point => !point.Complete))
        {
            yield return (Drawings.HealingLegendOpen, (x, y) => [Dot(x + (right / 2), y, Palette.Sheet, Palette.Accent)]);
        }

        if (chart.Trend.Series.Any(point => !point.InTrend))
        {
            yield return (Drawings.HealingLegendPale, (x, y) => [Dot(x + (right / 2), y, Palette.Soft, Palette.Soft)]);
        }

        if (chart.Trend.Series.Any(chart.IsAfterInjection))
        {
            yield return (
                Drawings.HealingLegendAfterInjection,
                (x, y) => [Dot(x + (right / 2), y, Palette.Accent, Palette.Accent), HealingChart.InjectionFrame(x + (right / 2), y, 8)]
            );
        }

        if (deciding is not null)
        {
            yield return (Drawings.HealingLegendFit, (x, y) => [Svg.Line(x, y, x + right, y, Palette.Ink, 1.6)]);
            if (chart.IsPhone)
            {
                yield return (
                    chart.Words.Slowest(Drawings.HealingLegendSlowest, chart.SlowestLogPer60Days),
                    (x, y) => [Svg.Line(x, y, x + right, y, Palette.Soft, 1.4, "6 4")]
                );
            }
        }

        if (target is { } value && chart.IsPhone)
        {
            yield return (chart.Words.Target(measure, value), (x, y) => [Svg.Line(x, y, x + right, y, Palette.Accent, 1.2, "8 3 1.5 3")]);
        }
    }

    private static XElement Dot(double x, double y, string fill, string stroke) =>
        Svg.Of("circle", ("cx", x), ("cy", y), ("r", 4.5), ("fill", fill), ("stroke", stroke), ("stroke-width", 2));
}
