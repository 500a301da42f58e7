using System.Globalization;
using RehabTrack.Reports.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Exercise;

/// <summary>How a strip of exercise is to be drawn.</summary>
public sealed record StripOptions
{
    /// <summary>For which width.</summary>
    public WidthClass Width { get; init; } = WidthClass.Desktop;

    /// <summary>Begins every id inside the drawing; two drawings on one page need two.</summary>
    public string IdPrefix { get; init; } = "exercise";

    /// <summary>The culture of words and figures.</summary>
    public CultureInfo Culture { get; init; } = TextCulture.Default;
}
