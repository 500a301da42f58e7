namespace RehabTrack.Reports.Exercise;

/// <summary>Something that happened on a day of the strip.</summary>
/// <param name="Date">The day.</param>
/// <param name="Text">A word or two: a decision, a concern, a treatment.</param>
/// <param name="IsConcern">Whether it is a concern, which stands out.</param>
public sealed record StripMark(DateOnly Date, string Text, bool IsConcern = false);
