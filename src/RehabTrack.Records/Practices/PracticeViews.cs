using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Practices;

/// <summary>Makes the view of the practice.</summary>
internal static class PracticeViews
{
    public static PracticeView Of(RecordsSession session)
    {
        PracticeRecord practice = session.Practice;
        return new PracticeView
        {
            Id = practice.Id,
            Version = practice.Version,
            Name = practice.Name,
            Phone = practice.Phone,
            TimeZone = practice.TimeZone,
            Language = practice.Language,
            RecheckIntervalDays = SummaryViews.Interval(practice),
            IntervalIsUsual = practice.RecheckIntervalDays is null,
            ShowChangeWhileEntering = practice.ShowChangeWhileEntering,
            AccessKeptDays = session.Reach == Reach.Practice ? practice.AccessKeptDays : null,
            ContactKeptDays = session.Reach == Reach.Practice ? practice.ContactKeptDays : null,
            Settings = session.Reach == Reach.Practice ? SettingsStore.Of(practice) : new AnalysisSettings(),
            SettingsAreUsual = practice.SettingsJson is null,
            ErrorOrigins =
                session.Reach == Reach.Practice ? Keeping.ErrorOrigins.Of(practice) : new Dictionary<MeasuredSize, ErrorOrigin>(),
            Today = session.Today,
        };
    }
}
