namespace RehabTrack.Records.History;

/// <summary>What is checked.</summary>
/// <param name="Noted">A line noted earlier that must still be there; null for none.</param>
public sealed record CheckTrailInput(TrailAnchor? Noted);
