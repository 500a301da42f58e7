using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Suggestions;

namespace RehabTrack.Rechecks.Analysis;

/// <summary>The one façade over linking, burden and trend for a case.</summary>
public static class CaseAnalyser
{
    /// <summary>The version of the engine; it rises whenever the same input can give other figures.</summary>
    public const string EngineVersion = "7";

    /// <summary>Analyses a case. Deterministic; the order of examinations and readings does not matter.</summary>
    /// <param name="course">
    /// The case with all its examinations. Every examination given is read, whatever its state: leave drafts out for the standing verdict.
    /// </param>
    /// <param name="constraints">Links that persons pinned or broke; those that name a later examination are passed over.</param>
    /// <param name="settings">Error model, linker and thresholds.</param>
    /// <param name="asOf">The date it speaks for; later examinations are not read.</param>
    public static CaseAnalysis Analyse(
        CaseCourse course,
        IReadOnlyList<LinkConstraint> constraints,
        AnalysisSettings settings,
        DateOnly asOf
    )
    {
        ArgumentNullException.ThrowIfNull(course);
        ArgumentNullException.ThrowIfNull(constraints);
        ArgumentNullException.ThrowIfNull(settings);
        CaseCourse known = Until(course, asOf);
        HashSet<string> ids = [.. known.Examinations.Select(examination => examination.Id)];
        LinkConstraint[] applicable =
        [
            .. constraints.Where(constraint =>
                ids.Contains(constraint.First.ExaminationId) && ids.Contains(constraint.Second.ExaminationId)
            ),
        ];
        return AnalyseLinked(known, LevelLinker.Link(known, applicable, settings.Linking), settings, asOf);
    }

    /// <summary>Analyses a case whose places are linked already: burden, trend and findings only.</summary>
    /// <param name="course">The case with all its examinations.</param>
    /// <param name="links">The tracks of those examinations; steps of later examinations are passed over.</param>
    /// <param name="settings">Error model and thresholds.</param>
    /// <param name="asOf">The date it speaks for; later examinations are not read.</param>
    public static CaseAnalysis AnalyseLinked(CaseCourse course, LinkedCourse links, AnalysisSettings settings, DateOnly asOf)
    {
        ArgumentNullException.ThrowIfNull(course);
        ArgumentNullException.ThrowIfNull(links);
        ArgumentNullException.ThrowIfNull(settings);
        CaseCourse known = Until(course, asOf);
        CaseGrid grid = new(known, links, new MeasurementError(settings.Error, course.Limb));
        LesionGrid lesions = new(grid, null);
        TrendReader reader = new(grid, settings.Trend, TrendStart.Of(known, settings.Trend, asOf));
        IReadOnlyList<ExaminationBurden> burdens = new BurdenReader(grid, lesions).Read();
        Trend trend = reader.Read(lesions);
        IReadOnlyList<PartBurden> parts = PartReader.Read(grid, lesions, burdens);
        IReadOnlyList<LesionTrend> lesionTrends = LesionReader.Read(grid, lesions, trend, reader, parts);
        return new CaseAnalysis
        {
            EngineVersion = EngineVersion,
            Settings = settings,
            AsOf = asOf,
            Links = links,
            Burdens = burdens,
            Parts = parts,
            Trend = trend,
            Lesions = lesionTrends,
            Findings = new FindingReader(grid, lesions, links, burdens, settings.Trend, reader.Examinations).Read(trend, lesionTrends),
        };
    }

    /// <summary>What the rules suggest to the vet after an analysis, with what a visit found beside the pictures. The vet decides.</summary>
    /// <param name="course">The course that was analysed.</param>
    /// <param name="analysis">Its analysis; the visit is its date.</param>
    /// <param name="asked">The step up that is asked about.</param>
    /// <param name="signs">What the visit found; what is null was not recorded.</param>
    public static Suggestion Suggest(CaseCourse course, CaseAnalysis analysis, AskedStep asked, VisitSigns signs)
    {
        ArgumentNullException.ThrowIfNull(course);
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(signs);
        AnalysisSettings settings = analysis.Settings;
        CaseCourse known = Until(course, analysis.AsOf);
        CaseGrid grid = new(known, analysis.Links, new MeasurementError(settings.Error, course.Limb));
        LevelEvidence? evidence = LevelEvidenceReader.Read(grid, new LesionGrid(grid, null), analysis.Trend, settings.Error);
        return new SuggestionReader(
            known,
            analysis.Findings,
            [analysis.Trend, .. analysis.Lesions.Select(lesion => lesion.Trend)],
            evidence,
            settings.Rules,
            settings.Trend
        ).Read(asked, signs, analysis.AsOf);
    }

    // An injury after every examination is not the one they show: its date is a slip, and taken as not known.
    private static CaseCourse Until(CaseCourse course, DateOnly asOf)
    {
        Examination[] known = [.. course.Examinations.Where(examination => examination.Date <= asOf)];
        return course with
        {
            Onset = known.Length > 0 && course.Onset > known.Max(examination => examination.Date) ? null : course.Onset,
            Examinations = known,
        };
    }
}
