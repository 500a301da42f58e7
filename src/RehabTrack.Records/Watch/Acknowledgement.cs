namespace RehabTrack.Records.Watch;

/// <summary>Who acknowledged what stands, and why.</summary>
/// <param name="By">Who.</param>
/// <param name="At">When (UTC).</param>
/// <param name="Reason">Why.</param>
public sealed record Acknowledgement(string By, DateTime At, string Reason);
