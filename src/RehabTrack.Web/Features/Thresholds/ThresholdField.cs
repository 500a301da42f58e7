using System.Globalization;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Thresholds;

/// <summary>A threshold as a field of the form.</summary>
/// <param name="Name">The setting, as <c>trend.windowExaminations</c>.</param>
/// <param name="Unit">How it is written.</param>
public sealed record ThresholdField(string Name, ThresholdUnit Unit = ThresholdUnit.Plain)
{
    /// <summary>The row of its table, which is also the id of its field.</summary>
    public string Row => Name.Split('.')[1];

    /// <summary>What the form calls it.</summary>
    public string Label =>
        ThresholdTexts.ResourceManager.GetString(Row, TextCulture.Default)
        ?? throw new InvalidOperationException($"The threshold {Row} has no label.");

    /// <summary>The row of the reference table: the usual value and its source.</summary>
    public ReferenceValue Usual => ReferenceTable.Load(Name.Split('.')[0]).Rows.First(row => row.Name == Row);

    /// <summary>A value as the form writes it.</summary>
    /// <param name="value">The value as it is kept.</param>
    public string Written(double value) => Text(Shown(value));

    /// <summary>
    /// The setting with what was typed; null with a problem beside it when that is no number of its range. A text that stands for the
    /// value as it is leaves the value as it is, whatever the form rounds away.
    /// </summary>
    /// <param name="settings">The settings as they are.</param>
    /// <param name="text">What was typed, with decimal point or comma.</param>
    public (AnalysisSettings? Settings, Problem? Problem) Take(AnalysisSettings settings, string? text)
    {
        double now = SettingRanges.ValueOf(settings, Name);
        if (string.Equals(text?.Trim(), Written(now), StringComparison.Ordinal))
        {
            return (settings, null);
        }

        SettingRange range = SettingRanges.Of(Name)!;
        if (!DecimalText.TryRead(text ?? string.Empty, out double shown, out string? code))
        {
            return (null, string.IsNullOrWhiteSpace(text) ? OutOf(range) : new Problem(Row, code!, text));
        }

        double value = Kept(shown);
        return range.Holds(value) ? (SettingRanges.With(settings, Name, value), null) : (null, OutOf(range));
    }

    private Problem OutOf(SettingRange range)
    {
        // A slow fall is the higher rate: the ends change places.
        double[] ends = [Shown(range.Lowest), Shown(range.Highest)];
        return new Problem(Row, range.IsWhole ? "threshold-not-whole" : "threshold-out-of-range", Text(ends.Min()), Text(ends.Max()));
    }

    private double Shown(double value) =>
        Unit switch
        {
            ThresholdUnit.Plain => value,
            ThresholdUnit.Percent => 100 * value,
            ThresholdUnit.PercentFall => 100 * (1 - Math.Exp(value)),
        };

    private double Kept(double shown) =>
        Unit switch
        {
            ThresholdUnit.Plain => shown,
            ThresholdUnit.Percent => shown / 100,
            ThresholdUnit.PercentFall => Math.Log(1 - (shown / 100)),
        };

    private static string Text(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
