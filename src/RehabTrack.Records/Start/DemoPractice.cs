namespace RehabTrack.Records.Start;

/// <summary>The demo's practice.</summary>
/// <param name="Name">Name.</param>
/// <param name="Phone">Telephone.</param>
/// <param name="TimeZone">Time zone.</param>
/// <param name="Language">Language.</param>
public sealed record DemoPractice(string Name, string? Phone, string TimeZone, string Language);
