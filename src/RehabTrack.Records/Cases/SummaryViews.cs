using System.Text.Json;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Schedule;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Cases;

/// <summary>Turns a kept summary into what pages read.</summary>
internal static class SummaryViews
{
    private static readonly int UsualInterval = new ScheduleSettings().IntervalDays;

    public static int Interval(PracticeRecord practice) => practice.RecheckIntervalDays ?? UsualInterval;

    public static CaseSummaryView Of(CaseSummaryRecord summary, int? ofCase, RecordsSession session, SignedRecheck signed)
    {
        RecheckDue due = DueDates.Of(ofCase, summary.LastSigned, session, signed);
        return new()
        {
            Verdict = summary.Verdict,
            Reason = summary.Reason,
            Measure = summary.Measure,
            RatePercentPer60Days = summary.RatePercentPer60Days,
            Lower95Percent = summary.Lower95Percent,
            Upper95Percent = summary.Upper95Percent,
            ExaminationCount = summary.ExaminationCount,
            FirstExamination = summary.FirstExamination,
            LastExamination = summary.LastExamination,
            LastSigned = summary.LastSigned,
            DueOn = due.DueDate,
            DueBy = due.By,
            WorstSeverity =
                summary.RedCount > 0 ? FindingSeverity.Red
                : summary.AmberCount > 0 ? FindingSeverity.Amber
                : summary.NoteCount > 0 ? FindingSeverity.Note
                : null,
            RedCount = summary.RedCount,
            AmberCount = summary.AmberCount,
        };
    }

    /// <summary>The findings that need a person, as a summary keeps them.</summary>
    public static IReadOnlyList<Finding> FindingsOf(string json) =>
        JsonSerializer.Deserialize<IReadOnlyList<Finding>>(json, RecordJson.Options)!;
}
