using System.Globalization;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Sizes;

/// <summary>How the sizes of an injury are to be drawn.</summary>
public sealed record SizeOptions
{
    /// <summary>Begins every id inside the drawing; two drawings on one page need two.</summary>
    public string IdPrefix { get; init; } = "sizes";

    /// <summary>The culture of words and dates.</summary>
    public CultureInfo Culture { get; init; } = TextCulture.Default;
}
