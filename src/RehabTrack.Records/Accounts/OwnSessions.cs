namespace RehabTrack.Records.Accounts;

/// <summary>Where the person who asks is signed in, latest first.</summary>
/// <param name="Sessions">The sessions that live.</param>
/// <param name="TimeZone">The practice's time zone.</param>
public sealed record OwnSessions(IReadOnlyList<SessionView> Sessions, string TimeZone);
