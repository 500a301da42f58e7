using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Suggestions;

namespace RehabTrack.Rechecks.Analysis;

/// <summary>All that an analysis can be set to; the default is the tables of <c>shared/</c>.</summary>
public sealed record AnalysisSettings
{
    /// <summary>Error of measurement.</summary>
    public MeasurementErrorSettings Error { get; init; } = new();

    /// <summary>Linker.</summary>
    public LinkingSettings Linking { get; init; } = new();

    /// <summary>Trend and verdict.</summary>
    public TrendSettings Trend { get; init; } = new();

    /// <summary>Rules that suggest; no verdict rests on them.</summary>
    public RuleSettings Rules { get; init; } = new();
}
