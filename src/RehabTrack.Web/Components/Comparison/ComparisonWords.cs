using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Comparison;

/// <summary>A change between two dates, in words.</summary>
public static class ComparisonWords
{
    /// <summary>What was measured, as a heading: "Ligament area".</summary>
    public static string NameOf(MeasuredSize size) => Names.AsTitle(Names.Of(size));

    /// <summary>A value with its unit.</summary>
    public static string Value(MeasuredSize size, double value) =>
        size switch
        {
            MeasuredSize.LigamentArea or MeasuredSize.LesionArea => Figures.Area(new(value)),
            MeasuredSize.LesionPercent => Figures.Percent(new(value)),
            MeasuredSize.Thickness or MeasuredSize.Width => Figures.Length(new(value)),
        };

    /// <summary>Both values: "1.50 cm² → 1.20 cm²".</summary>
    public static string FromTo(SizeChange change)
    {
        ArgumentNullException.ThrowIfNull(change);
        return Text(ComparisonTexts.FromTo, Value(change.Size, change.Before), Value(change.Size, change.Now));
    }

    /// <summary>What the change says against the error of measurement: "+4 %, cannot tell: up to +21 % is measurement error".</summary>
    public static string Say(SizeChange change)
    {
        ArgumentNullException.ThrowIfNull(change);
        if (change.Before.Equals(change.Now))
        {
            return ComparisonTexts.Same;
        }

        if (change.Before == 0)
        {
            return change.IsDetectable
                ? ComparisonTexts.NewBeyondError
                : Text(ComparisonTexts.NewWithinError, Value(change.Size, change.DetectableAbove));
        }

        bool rose = change.Now > change.Before;
        return Text(
            !change.IsDetectable ? ComparisonTexts.CannotTell
                : rose ? ComparisonTexts.Larger
                : ComparisonTexts.Smaller,
            Difference(change, change.Now),
            Difference(change, rose ? change.DetectableAbove : change.DetectableBelow)
        );
    }

    /// <summary>
    /// How much a rise of the ligament area asks of a person: the lines stand in the settings, and no error holds them back. Null for every
    /// other change.
    /// </summary>
    public static FindingSeverity? CautionOf(SizeChange change, TrendSettings settings)
    {
        ArgumentNullException.ThrowIfNull(change);
        ArgumentNullException.ThrowIfNull(settings);
        return change is { Size: MeasuredSize.LigamentArea, ChangePercent: { } percent }
            ? LigamentRise.SeverityOf(percent / 100, settings)
            : null;
    }

    /// <summary>That caution in words: "up by more than 10 %".</summary>
    public static string Caution(FindingSeverity severity, TrendSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        double line = severity == FindingSeverity.Red ? settings.RedLigamentRise : settings.AmberLigamentRise;
        return Text(ComparisonTexts.RiseOver, Figures.Percent(new Percent(100 * line)));
    }

    /// <summary>That several levels are judged together; null where there is one.</summary>
    public static string? Together(int levels) => levels > 1 ? Text(ComparisonTexts.SeveralLevels, levels) : null;

    // A share changes in points: a percent of a percent would be misread.
    private static string Difference(SizeChange change, double value) =>
        change.Size == MeasuredSize.LesionPercent
            ? Text(ComparisonTexts.Points, Signed(value - change.Before))
            : Figures.SignedPercent(100 * ((value / change.Before) - 1));

    private static string Signed(double value) => (value > 0 ? "+" : string.Empty) + Figures.Number(value, "0");

    private static string Text(string pattern, params object[] arguments) => string.Format(TextCulture.Default, pattern, arguments);
}
