using RehabTrack.Rechecks.Schedule;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Cases;

/// <summary>When the recheck of a case is due, by the interval that counts for it and the next gate of the horse's plan.</summary>
internal static class DueDates
{
    private static readonly ScheduleSettings Usual = new();

    public static ScheduleSettings Settings(int? ofCase, PracticeRecord practice, int? step = null) =>
        Usual.For(practice.RecheckIntervalDays, ofCase, step);

    public static RecheckDue Of(
        int? ofCase,
        DateOnly? lastSigned,
        PracticeRecord practice,
        DateOnly today,
        DateOnly? gate = null,
        int? step = null
    ) => RecheckDue.Of(lastSigned, Settings(ofCase, practice, step), today, gate);
}
