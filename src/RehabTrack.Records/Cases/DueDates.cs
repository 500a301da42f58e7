using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Schedule;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Cases;

/// <summary>When the recheck of a case is due: by the interval that counts for it, or by what was signed for the horse.</summary>
internal static class DueDates
{
    private static readonly ScheduleSettings Usual = new();

    public static ScheduleSettings Settings(PracticeRecord practice, int? ofCase = null, int? step = null) =>
        Usual.For(practice.RecheckIntervalDays, ofCase, step);

    public static RecheckDue Of(int? ofCase, DateOnly? lastSigned, RecordsSession session, SignedRecheck signed) =>
        RecheckDue.Of(lastSigned, Settings(session.Practice, ofCase, signed.IntervalDays), session.Today, signed.Due, signed.IsGate);
}
