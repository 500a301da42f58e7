using System.Globalization;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Reports.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Agreements;

/// <summary>How a plot of differences is to be drawn.</summary>
public sealed record AgreementOptions
{
    /// <summary>What was measured: it names the unit.</summary>
    public required MeasuredSize Size { get; init; }

    /// <summary>For which width.</summary>
    public WidthClass Width { get; init; } = WidthClass.Desktop;

    /// <summary>Begins every id inside the drawing; two drawings on one page need two.</summary>
    public string IdPrefix { get; init; } = "agreement";

    /// <summary>The culture of words and figures.</summary>
    public CultureInfo Culture { get; init; } = TextCulture.Default;
}
