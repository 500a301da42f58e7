using System.Globalization;
using RehabTrack.Reports.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Reports.Ladder;

/// <summary>How a ladder is to be drawn.</summary>
public sealed record LadderOptions
{
    /// <summary>For which width.</summary>
    public WidthClass Width { get; init; } = WidthClass.Desktop;

    /// <summary>Whether each place is moved by the shift of its examination's tape, so that tracks run level.</summary>
    public bool Straightened { get; init; }

    /// <summary>The track to bring forward; null for none.</summary>
    public string? SelectedTrack { get; init; }

    /// <summary>The examinations to bring forward: none, one, or the two that are compared, the chosen one first.</summary>
    public IReadOnlyList<string> SelectedExaminations { get; init; } = [];

    /// <summary>The first examination to show, counted from 0; null shows the latest ones that fit, and the chosen one among them.</summary>
    public int? FirstShown { get; init; }

    /// <summary>Whether places can be pressed. A picture on paper has none that can.</summary>
    public bool Interactive { get; init; } = true;

    /// <summary>Begins every id inside the drawing; two drawings on one page need two.</summary>
    public string IdPrefix { get; init; } = "ladder";

    /// <summary>The culture of words and figures.</summary>
    public CultureInfo Culture { get; init; } = TextCulture.Default;
}
