namespace RehabTrack.Records.Exercise;

/// <summary>A vet to whom a concern is written.</summary>
/// <param name="Name">The name.</param>
/// <param name="Mail">The address.</param>
public sealed record ConcernReader(string Name, string Mail);
