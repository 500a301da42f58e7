namespace RehabTrack.Records.Feeds;

/// <summary>What a calendar is made of.</summary>
/// <param name="PracticeName">The practice.</param>
/// <param name="Visits">Booked rechecks, cancelled ones too.</param>
public sealed record CalendarContent(string PracticeName, IReadOnlyList<CalendarVisit> Visits);
