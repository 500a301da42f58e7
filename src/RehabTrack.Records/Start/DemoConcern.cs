namespace RehabTrack.Records.Start;

/// <summary>A concern of the trainer.</summary>
/// <param name="Date">When.</param>
/// <param name="Words">What was seen.</param>
public sealed record DemoConcern(DateOnly Date, string Words);
