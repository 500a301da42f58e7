using System.Xml.Linq;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Reports.Pictures;

namespace RehabTrack.Reports.Healing;

/// <summary>The fitted course of the examinations that decide, and the slowest acceptable course from the same start.</summary>
internal sealed class DecidingTrend
{
    private const int Pieces = 16;
    private readonly SlopeFigures _window;
    private readonly double _logAtStart;
    private readonly double _slowest;

    private DecidingTrend(SlopeFigures window, double logAtStart, double slowest)
    {
        _window = window;
        _logAtStart = logAtStart;
        _slowest = slowest;
    }

    /// <summary>Null where a rate has no meaning: fewer than two points, a value of 0, or a measure without a slowest acceptable rate.</summary>
    public static DecidingTrend? Of(Trend trend, Measure measure)
    {
        SeriesPoint[] points = [.. trend.Series.Where(point => point.InWindow)];
        if (
            trend.Window is not { } window
            || points.Length < 2
            || !MeasureRules.HasRate(measure)
            || points.Any(point => point.Value <= 0)
            || window.To <= window.From
        )
        {
            return null;
        }

        double weights = 0;
        double days = 0;
        double logs = 0;
        foreach (SeriesPoint point in points)
        {
            double spread = Math.Max((point.Upper95 - point.Lower95) / point.Value, 1e-3);
            double weight = 1 / (spread * spread);
            weights += weight;
            days += weight * (point.Date.DayNumber - window.From.DayNumber);
            logs += weight * Math.Log(point.Value);
        }

        double start = (logs / weights) - (window.LogPer60Days * days / weights / 60);
        return new DecidingTrend(window, start, trend.SlowestAcceptableLogPer60Days);
    }

    public double FitAt(DateOnly date) => At(date, _window.LogPer60Days);

    public double SlowestAt(DateOnly date) => At(date, _slowest);

    public void Draw(XElement scenery, TimeAxis time, ValueAxis values) =>
        scenery.Add(
            Curve(time, values, SlowestAt)
                .With(("class", "slowest"), ("stroke", Palette.Soft), ("stroke-width", 1.4), ("stroke-dasharray", "6 4")),
            Curve(time, values, FitAt).With(("class", "fit"), ("stroke", Palette.Ink), ("stroke-width", 1.6))
        );

    private XElement Curve(TimeAxis time, ValueAxis values, Func<DateOnly, double> at)
    {
        int days = _window.To.DayNumber - _window.From.DayNumber;
        DateOnly[] dates = [.. Enumerable.Range(0, Pieces + 1).Select(i => _window.From.AddDays(days * i / Pieces)).Distinct()];
        string path = string.Join('L', dates.Select(date => $"{Svg.Written(time.XOf(date))} {Svg.Written(values.YOf(at(date)))}"));
        return Svg.Of("path", ("d", "M" + path), ("fill", "none"));
    }

    private double At(DateOnly date, double slope) => Math.Exp(_logAtStart + (slope * (date.DayNumber - _window.From.DayNumber) / 60));
}
