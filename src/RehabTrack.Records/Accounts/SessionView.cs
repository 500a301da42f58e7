namespace RehabTrack.Records.Accounts;

/// <summary>A browser in which somebody is signed in.</summary>
/// <param name="Id">The session.</param>
/// <param name="Browser">What the browser calls itself.</param>
/// <param name="BegunAt">When they signed in.</param>
/// <param name="LastSeenAt">When it last asked, to the minute.</param>
public sealed record SessionView(Guid Id, string Browser, DateTime BegunAt, DateTime LastSeenAt);
