namespace RehabTrack.Records.Exercise;

/// <summary>What came of a log.</summary>
/// <param name="Id">The line.</param>
/// <param name="IsConcern">Whether it opened a concern: then the practice must be called.</param>
public sealed record LogAnswer(Guid Id, bool IsConcern);
