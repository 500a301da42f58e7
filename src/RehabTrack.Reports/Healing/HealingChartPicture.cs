using RehabTrack.Reports.Pictures;

namespace RehabTrack.Reports.Healing;

/// <summary>A healing chart, with its time axis and where its points stand.</summary>
public sealed record HealingChartPicture : Picture
{
    /// <summary>The time axis; null where there is nothing to draw.</summary>
    public required TimeAxis? Axis { get; init; }

    /// <summary>One point an examination that has the measure, by date.</summary>
    public required IReadOnlyList<ChartPoint> Points { get; init; }
}
