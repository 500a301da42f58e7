namespace RehabTrack.Records.History;

/// <summary>Some lines of the practice's trail.</summary>
/// <param name="Lines">Latest first.</param>
/// <param name="Next">The number before which the next page begins; null when there is none.</param>
/// <param name="Kinds">The kinds of records that can be asked for.</param>
/// <param name="TimeZone">The practice's time zone.</param>
public sealed record TrailPage(IReadOnlyList<ChangeView> Lines, long? Next, IReadOnlyList<string> Kinds, string TimeZone);
