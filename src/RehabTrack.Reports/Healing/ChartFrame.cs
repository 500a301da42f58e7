using RehabTrack.Reports.Pictures;

namespace RehabTrack.Reports.Healing;

/// <summary>The measures of a chart over time and of every strip under it: only drawn alike do their days stand under each other.</summary>
/// <param name="For">For which width.</param>
internal readonly record struct ChartFrame(WidthClass For)
{
    public bool IsPhone => For == WidthClass.Phone;

    public double Width => IsPhone ? 380 : 1100;

    /// <summary>Size of quiet words.</summary>
    public double Small => IsPhone ? 13 : 12.5;

    public double PlotLeft => IsPhone ? 36 : 52;

    public double PlotRight => IsPhone ? Width - 4 : Width - 150;

    /// <summary>The axis, with room for the error of a point at either end.</summary>
    public TimeAxis AxisOf(DateOnly from, DateOnly to) =>
        IsPhone ? new TimeAxis(from, to, PlotLeft + 20, PlotRight - 20) : new TimeAxis(from, to, PlotLeft + 32, PlotRight - 26);
}
