namespace RehabTrack.Records.History;

/// <summary>A field that changed.</summary>
/// <param name="Field">Its name; a reading's is "readings[Body 12.5].lesionAreaCm2".</param>
/// <param name="Before">What it said; null for nothing.</param>
/// <param name="After">What it says; null for nothing.</param>
public sealed record FieldChange(string Field, string? Before, string? After);
