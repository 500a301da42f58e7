namespace RehabTrack.Records.Exercise;

/// <summary>What came of a log.</summary>
/// <param name="Id">The line.</param>
/// <param name="IsConcern">Whether it opened a concern: then the practice must be called.</param>
/// <param name="IsEarly">Whether its day lies before the injury or long ago: logged, and worth a second look at the date.</param>
public sealed record LogAnswer(Guid Id, bool IsConcern, bool IsEarly = false);
