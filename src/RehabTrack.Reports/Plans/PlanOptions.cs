using System.Globalization;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Reports.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Plans;

/// <summary>How the weeks of a plan are to be drawn.</summary>
public sealed record PlanOptions
{
    /// <summary>Where the drawing starts: the work up to the next gate counts as signed, what follows is drawn in outline.</summary>
    public PlanPlace Start { get; init; }

    /// <summary>Where the horse stands today; null when it stands nowhere in this plan.</summary>
    public PlanPlace? Today { get; init; }

    /// <summary>For which width.</summary>
    public WidthClass Width { get; init; } = WidthClass.Desktop;

    /// <summary>Begins every id inside the drawing; two drawings on one page need two.</summary>
    public string IdPrefix { get; init; } = "plan";

    /// <summary>The culture of words and figures.</summary>
    public CultureInfo Culture { get; init; } = TextCulture.Default;
}
