namespace RehabTrack.Records.Start;

/// <summary>A yard of the demo.</summary>
/// <param name="Key">By what the definition names it.</param>
/// <param name="Name">Name.</param>
/// <param name="Phone">Telephone.</param>
public sealed record DemoYard(string Key, string Name, string? Phone);
