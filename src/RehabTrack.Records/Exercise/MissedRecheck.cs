namespace RehabTrack.Records.Exercise;

/// <summary>A booked day on which nobody examined.</summary>
/// <param name="CaseId">The case.</param>
/// <param name="Date">The booked day.</param>
public sealed record MissedRecheck(Guid CaseId, DateOnly Date);
