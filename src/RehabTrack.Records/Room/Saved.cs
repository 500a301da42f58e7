namespace RehabTrack.Records.Room;

/// <summary>What was written.</summary>
/// <param name="Id">The record.</param>
/// <param name="Version">Its version now: send it with the next change.</param>
public sealed record Saved(Guid Id, Guid Version);
