using System.Globalization;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Reports.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Healing;

/// <summary>What a healing chart says in words: the same figures that its marks show.</summary>
internal sealed class HealingWords(CultureInfo culture)
{
    public string UnitOf(Measure measure) =>
        measure switch
        {
            Measure.LesionVolume => Drawings.UnitVolume,
            Measure.LesionArea => Drawings.UnitArea,
            Measure.LesionPercent => Drawings.UnitPercent,
            Measure.Thickness or Measure.ThicknessExcess or Measure.ThicknessAboveOwn => Drawings.UnitLength,
            Measure.Grades => Drawings.UnitGrades,
        };

    public string Value(Measure measure, double value) =>
        Figures.Number(value, measure is Measure.Grades or Measure.LesionPercent ? "0" : "0.00", culture);

    public string WithUnit(Measure measure, double value) => Say(Drawings.ValueWithUnit, Value(measure, value), UnitOf(measure));

    public string TitleOf(Trend trend, Measure measure, DateOnly first, DateOnly last) =>
        first == last
            ? Say(Drawings.HealingTitleOne, Names.AsTitle(Names.Of(measure, culture), culture), Figures.Date(first, null, culture))
            : Say(
                Drawings.HealingTitle,
                Names.AsTitle(Names.Of(measure, culture), culture),
                Figures.Date(first, null, culture),
                Figures.Date(last, null, culture),
                Names.Of(trend.Verdict, culture)
            );

    public string DescriptionOf(Trend trend, Measure measure, IReadOnlyList<PointStep> steps, double? target)
    {
        List<string> sentences = [Drawings.HealingDescription];
        if (steps.Any(step => step.InsideError))
        {
            sentences.Add(Drawings.HealingDescriptionInside);
        }

        if (trend.Series.Any(point => !point.Complete))
        {
            sentences.Add(Drawings.HealingDescriptionOpen);
        }

        if (trend.Window is { } window)
        {
            sentences.Add(
                Say(
                    Drawings.HealingDescriptionWindow,
                    window.Examinations,
                    Figures.Dates(window.From, window.To, culture),
                    Figures.SignedPercent(window.RatePercent, null, culture),
                    Figures.SignedPercents(window.Lower95Percent, window.Upper95Percent, culture)
                )
            );
        }

        if (target is { } value)
        {
            sentences.Add(Say(Drawings.HealingDescriptionTarget, WithUnit(measure, value)));
        }

        return string.Join(' ', sentences);
    }

    /// <summary>The verdict as it stands over the examinations that decide.</summary>
    public string VerdictOf(Trend trend) =>
        trend.Verdict == Verdict.NotYetReadable ? Drawings.HealingVerdictUnread
        : trend.Since is { } since && trend.Verdict != Verdict.AtTarget
            ? Say(Drawings.HealingVerdictSince, Names.Of(trend.Verdict, culture), Figures.ShortDate(since, null, culture))
        : Names.Of(trend.Verdict, culture);

    public string RateOf(SlopeFigures window) => Say(Drawings.HealingRate, Figures.SignedPercent(window.RatePercent, null, culture));

    public string RateBetween(SlopeFigures window) =>
        Say(
            Drawings.HealingRateBetween,
            Figures.SignedPercent(window.Lower95Percent, null, culture),
            Figures.SignedPercent(window.Upper95Percent, null, culture)
        );

    public string Slowest(string text, double logPer60Days) =>
        Say(text, Figures.SignedPercent(SlopeFigures.ToPercent(logPer60Days), null, culture));

    public string Target(Measure measure, double value) => Say(Drawings.HealingTarget, WithUnit(measure, value));

    public IReadOnlyList<string> LinesOf(Measure measure, SeriesPoint point, PointStep? step)
    {
        List<string> lines =
        [
            Say(
                Drawings.PointLabel,
                Figures.Date(point.Date, null, culture),
                Names.Of(measure, culture),
                WithUnit(measure, point.Value),
                Value(measure, point.Lower95),
                WithUnit(measure, point.Upper95)
            ),
        ];
        if (step is not null)
        {
            lines.Add(Say(Drawings.PointChange, ChangeOf(step)));
        }

        if (!point.Complete)
        {
            lines.Add(Drawings.PointIncomplete);
        }

        lines.Add(
            point.InWindow ? Drawings.PointInWindow
            : point.InTrend ? Drawings.CountsTrend
            : Drawings.PointNotInTrend
        );
        return lines;
    }

    public DrawingTable TableOf(Measure measure, IReadOnlyList<SeriesPoint> series, IReadOnlyList<PointStep> steps) =>
        new(
            Drawings.HealingTableCaption,
            [
                new(Drawings.ColumnDate, false),
                new(Say(Drawings.ColumnValue, Names.AsTitle(Names.Of(measure, culture), culture), UnitOf(measure)), true),
                new(Drawings.ColumnLower, true),
                new(Drawings.ColumnUpper, true),
                new(Drawings.ColumnChange, true),
                new(Drawings.ColumnComplete, false),
                new(Drawings.ColumnCounts, false),
            ],
            [
                .. series.Select(
                    (point, i) =>
                        (IReadOnlyList<string>)
                            [
                                Figures.Date(point.Date, null, culture),
                                Value(measure, point.Value),
                                Value(measure, point.Lower95),
                                Value(measure, point.Upper95),
                                i == 0 ? Figures.SignedPercent(null) : ChangeOf(steps[i - 1]),
                                point.Complete ? Drawings.Yes : Drawings.No,
                                point.InWindow ? Drawings.CountsDecides
                                : point.InTrend ? Drawings.CountsTrend
                                : Drawings.CountsNot,
                            ]
                ),
            ]
        );

    private string ChangeOf(PointStep step) =>
        (step.ChangePercent, step.InsideError) switch
        {
            ({ } change, false) => Figures.SignedPercent(change, null, culture),
            ({ } change, true) => Say(Drawings.CannotTellChange, Figures.SignedPercent(change, null, culture)),
            (null, true) => Drawings.CannotTell,
            (null, false) => Figures.SignedPercent(null),
        };

    private string Say(string text, params ReadOnlySpan<object?> arguments) => string.Format(culture, text, arguments);
}
