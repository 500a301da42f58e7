namespace RehabTrack.Records.Feeds;

/// <summary>The address under which the practice's booked rechecks can be read, without its secret.</summary>
/// <param name="Id">Identity.</param>
/// <param name="Version">Version token.</param>
/// <param name="MadeBy">Who made it.</param>
/// <param name="MadeAt">When, UTC.</param>
public sealed record FeedView(Guid Id, Guid Version, string MadeBy, DateTime MadeAt);
