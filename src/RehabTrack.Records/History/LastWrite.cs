namespace RehabTrack.Records.History;

/// <summary>Who wrote a record last, and when.</summary>
/// <param name="By">The person's name.</param>
/// <param name="At">When, UTC.</param>
/// <param name="TimeZone">The time zone of the practice.</param>
public sealed record LastWrite(string By, DateTime At, string TimeZone);
