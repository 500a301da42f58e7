using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Exercise;
using RehabTrack.Web.Components.Cases;

namespace RehabTrack.Web.Features.Decisions;

/// <summary>An open case as it stands today.</summary>
/// <param name="Case">The case.</param>
/// <param name="Analysis">What the analysis says.</param>
public sealed record OpenCaseToday(CaseView Case, CaseAnalysis Analysis)
{
    /// <summary>Its name beside the horse's.</summary>
    public string Name => CaseNames.Of(Case.Course.Limb, Case.Course.Structure);

    /// <summary>Whether anything was examined yet.</summary>
    public bool IsExamined => Case.Course.Examinations.Any(examination => examination.Date <= Case.Practice.Today);

    /// <summary>Analyses a case as of today.</summary>
    public static OpenCaseToday Of(CaseView injury)
    {
        ArgumentNullException.ThrowIfNull(injury);
        return new OpenCaseToday(
            injury,
            CaseAnalyser.Analyse(injury.Course, injury.Constraints, injury.Practice.Settings, injury.Practice.Today)
        );
    }

    /// <summary>What the rules suggest, as a signature keeps it.</summary>
    public Suggestion Suggest(AskedStep asked, Visit visit)
    {
        ArgumentNullException.ThrowIfNull(visit);
        return CaseAnalyser.Suggest(Case.Course, Analysis, asked, visit.ForRules);
    }
}
