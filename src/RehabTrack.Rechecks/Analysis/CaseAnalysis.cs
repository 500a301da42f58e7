using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Rechecks.Analysis;

/// <summary>Everything the computation says of a case, with what it rests on.</summary>
public sealed record CaseAnalysis
{
    /// <summary>Version of the engine that computed it.</summary>
    public required string EngineVersion { get; init; }

    /// <summary>The settings it was computed with.</summary>
    public required AnalysisSettings Settings { get; init; }

    /// <summary>The date it speaks for; later examinations are not read.</summary>
    public required DateOnly AsOf { get; init; }

    /// <summary>Same places across examinations.</summary>
    public required LinkedCourse Links { get; init; }

    /// <summary>The whole injury; one an examination, ordered by date and id.</summary>
    public required IReadOnlyList<ExaminationBurden> Burdens { get; init; }

    /// <summary>One a path that ever showed lesion, in the order of paths.</summary>
    public required IReadOnlyList<PartBurden> Parts { get; init; }

    /// <summary>The trend of the whole case.</summary>
    public required Trend Trend { get; init; }

    /// <summary>One a lesion, with trend and burdens, ordered by part and name.</summary>
    public required IReadOnlyList<LesionTrend> Lesions { get; init; }

    /// <summary>What a person must be told, worst first.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
