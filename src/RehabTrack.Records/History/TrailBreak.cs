namespace RehabTrack.Records.History;

/// <summary>The first line of a trail that does not fit.</summary>
/// <param name="Number">Its number; null for a line without one.</param>
/// <param name="At">Its time, UTC; of a missing line the time of the next one, null when there is none.</param>
/// <param name="Why">Why it does not fit.</param>
public sealed record TrailBreak(long? Number, DateTime? At, TrailFault Why);
