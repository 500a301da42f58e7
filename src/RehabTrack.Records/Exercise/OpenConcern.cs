namespace RehabTrack.Records.Exercise;

/// <summary>A concern that waits for a vet.</summary>
/// <param name="OpenedAt">When it was reported (UTC).</param>
/// <param name="SeenBy">Who of the practice saw it first; null while nobody did.</param>
/// <param name="SeenAt">When (UTC).</param>
public sealed record OpenConcern(DateTime OpenedAt, string? SeenBy, DateTime? SeenAt);
