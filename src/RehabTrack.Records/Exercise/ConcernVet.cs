namespace RehabTrack.Records.Exercise;

/// <summary>A vet whom a concern reaches.</summary>
/// <param name="Id">The responsible vet.</param>
/// <param name="Name">That vet's name.</param>
/// <param name="CoveringId">Who stands in today; null when nobody has to.</param>
/// <param name="CoveringName">That vet's name.</param>
public sealed record ConcernVet(Guid Id, string Name, Guid? CoveringId, string? CoveringName);
