using RehabTrack.Rechecks.Analysis;
using RehabTrack.Records.Cases;
using RehabTrack.Web.Components.Cases;

namespace RehabTrack.Web.Features.Timeline;

/// <summary>A case on the time axis of its horse.</summary>
/// <param name="Case">The case.</param>
/// <param name="Analysis">What the analysis says today; null before the first examination.</param>
public sealed record TimeCase(CaseView Case, CaseAnalysis? Analysis)
{
    /// <summary>Its name beside the horse's.</summary>
    public string Name => CaseNames.Of(Case.Course.Limb, Case.Course.Structure);

    /// <summary>Analyses a case as of today.</summary>
    public static TimeCase Of(CaseView injury)
    {
        ArgumentNullException.ThrowIfNull(injury);
        DateOnly today = injury.Practice.Today;
        return new TimeCase(
            injury,
            injury.Course.Examinations.Any(examination => examination.Date <= today)
                ? CaseAnalyser.Analyse(injury.Course, injury.Constraints, injury.Practice.Settings, today)
                : null
        );
    }
}
