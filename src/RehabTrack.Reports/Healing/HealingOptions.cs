using System.Globalization;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Reports.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Healing;

/// <summary>How a healing chart is to be drawn.</summary>
public sealed record HealingOptions
{
    /// <summary>For which width.</summary>
    public WidthClass Width { get; init; } = WidthClass.Desktop;

    /// <summary>The trend of one lesion instead of the whole case's; null for the case.</summary>
    public Trend? Trend { get; init; }

    /// <summary>The ends of the time axis where several charts share one; null for the examinations' own.</summary>
    public (DateOnly From, DateOnly To)? Axis { get; init; }

    /// <summary>Days since an injection into the lesion, by examination, for those that stand soon after one.</summary>
    public IReadOnlyDictionary<string, int> DaysAfterInjection { get; init; } = new Dictionary<string, int>();

    /// <summary>The examinations to bring forward: none, one, or the two that are compared.</summary>
    public IReadOnlyList<string> SelectedExaminations { get; init; } = [];

    /// <summary>Whether points can be pressed. A picture on paper has none that can.</summary>
    public bool Interactive { get; init; } = true;

    /// <summary>Begins every id inside the drawing; two drawings on one page need two.</summary>
    public string IdPrefix { get; init; } = "healing";

    /// <summary>The culture of words and figures.</summary>
    public CultureInfo Culture { get; init; } = TextCulture.Default;
}
