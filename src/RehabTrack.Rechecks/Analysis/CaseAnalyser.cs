using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Rechecks.Analysis;

/// <summary>The one façade over linking, burden and trend for a case.</summary>
public static class CaseAnalyser
{
    /// <summary>Analyses a case. Deterministic; the order of examinations and readings does not matter.</summary>
    /// <param name="course">The case with all its examinations.</param>
    /// <param name="constraints">Links that persons pinned or broke.</param>
    /// <param name="settings">Error model, linker and thresholds.</param>
    /// <param name="asOf">The date it speaks for; later examinations are not read.</param>
    public static CaseAnalysis Analyse(
        CaseCourse course,
        IReadOnlyList<LinkConstraint> constraints,
        AnalysisSettings settings,
        DateOnly asOf
    ) => throw new InvalidOperationException("The engine is under construction.");
}
