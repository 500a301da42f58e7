using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Watch;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Cases;

/// <summary>Renews what is kept of the analysis of a case. Drafts do not count; signed, outside and history do.</summary>
internal static class SummaryRenewal
{
    public static async Task RenewAsync(RecordsSession session, IReadOnlyCollection<Guid> caseIds, CancellationToken cancellation)
    {
        if (caseIds.Count == 0)
        {
            return;
        }

        AnalysisSettings settings = SettingsStore.Of(session.Practice);
        foreach (Guid caseId in caseIds)
        {
            await RenewAsync(session, caseId, settings, cancellation);
        }
    }

    /// <summary>Renews the summary of one case and places the holds that follow from it; saving is the caller's.</summary>
    public static async Task RenewAsync(RecordsSession session, Guid caseId, AnalysisSettings settings, CancellationToken cancellation)
    {
        Standing standing = await RenewAsync(session.Records, caseId, settings, session.Now, session.Today, cancellation);
        await ExerciseHolds.PlaceAsync(session, standing.Case, standing.Course, standing.Words, settings, standing.Analysis, cancellation);
    }

    /// <summary>Renews the summary of one case in the context; saving is the caller's.</summary>
    public static async Task<Standing> RenewAsync(
        RecordsContext records,
        Guid caseId,
        AnalysisSettings settings,
        DateTime now,
        DateOnly today,
        CancellationToken cancellation
    )
    {
        CaseRecord injury = await records.Cases.AsNoTracking().FirstAsync(record => record.Id == caseId, cancellation);
        (CaseCourse course, IReadOnlyList<LinkConstraint> constraints) = await CaseRows.StandingAsync(records, injury, today, cancellation);
        CaseAnalysis analysis = CaseAnalyser.Analyse(course, constraints, settings, today);
        CaseSummaryRecord computed = Of(analysis, course, constraints, caseId, records.PracticeId, now);
        CaseSummaryRecord? kept = await records.CaseSummaries.FirstOrDefaultAsync(summary => summary.CaseId == caseId, cancellation);
        if (kept is null)
        {
            records.CaseSummaries.Add(computed);
        }
        else
        {
            records.Entry(kept).CurrentValues.SetValues(computed);
        }

        return new Standing(injury, course, constraints, analysis);
    }

    /// <summary>Analyses a course and makes its summary.</summary>
    public static CaseSummaryRecord Compute(
        CaseCourse course,
        IReadOnlyList<LinkConstraint> constraints,
        Guid caseId,
        Guid practiceId,
        AnalysisSettings settings,
        DateTime now,
        DateOnly today
    ) => Of(CaseAnalyser.Analyse(course, constraints, settings, today), course, constraints, caseId, practiceId, now);

    private static CaseSummaryRecord Of(
        CaseAnalysis analysis,
        CaseCourse course,
        IReadOnlyList<LinkConstraint> constraints,
        Guid caseId,
        Guid practiceId,
        DateTime now
    )
    {
        AnalysisSettings settings = analysis.Settings;
        DateOnly today = analysis.AsOf;
        string settingsJson = SettingsStore.Write(settings);
        Examination[] read = [.. course.Examinations.Where(examination => examination.Date <= today)];
        Examination[] signed = [.. read.Where(examination => examination.State == ExaminationState.Signed)];
        // What an earlier examination said was looked at then: it asks for no look today.
        int red = analysis.Findings.Count(finding => finding is { Severity: FindingSeverity.Red, IsEarlier: false });
        int amber = analysis.Findings.Count(finding => finding is { Severity: FindingSeverity.Amber, IsEarlier: false });
        return new CaseSummaryRecord
        {
            CaseId = caseId,
            PracticeId = practiceId,
            EngineVersion = analysis.EngineVersion,
            SettingsHash = SettingsStore.Hash(settingsJson),
            SettingsJson = settingsJson,
            InputHash = Rechecks.Analysis.InputHash.Of(course, constraints, settings, today),
            AsOf = today,
            ComputedAt = now,
            Verdict = analysis.Trend.Verdict,
            Reason = analysis.Trend.Reason,
            Measure = analysis.Trend.Measure,
            RatePercentPer60Days = Finite(analysis.Trend.Window?.RatePercent),
            Lower95Percent = Finite(analysis.Trend.Window?.Lower95Percent),
            Upper95Percent = Finite(analysis.Trend.Window?.Upper95Percent),
            ExaminationCount = read.Length,
            FirstExamination = read.Length == 0 ? null : read.Min(examination => examination.Date),
            LastExamination = read.Length == 0 ? null : read.Max(examination => examination.Date),
            LastSigned = signed.Length == 0 ? null : signed.Max(examination => examination.Date),
            RedCount = red,
            AmberCount = amber,
            NoteCount = analysis.Findings.Count - red - amber,
            LookRank = Rank(analysis.Trend.Verdict, red, amber),
            FindingsJson = JsonSerializer.Serialize(analysis.Findings.Where(WatchRules.IsWatched), RecordJson.Options),
        };
    }

    private static int Rank(Verdict verdict, int red, int amber)
    {
        int byVerdict = verdict switch
        {
            Verdict.Worsening => 3,
            Verdict.Stalled => 2,
            Verdict.HealingSlowly => 1,
            Verdict.Healing or Verdict.AtTarget or Verdict.NotYetReadable => 0,
        };
        return Math.Max(
            byVerdict,
            red > 0 ? 3
                : amber > 0 ? 2
                : 0
        );
    }

    private static double? Finite(double? value) => value is { } number && double.IsFinite(number) ? number : null;

    /// <summary>A case as it stands, with its analysis.</summary>
    internal sealed record Standing(CaseRecord Case, CaseCourse Course, IReadOnlyList<LinkConstraint> Words, CaseAnalysis Analysis);
}
