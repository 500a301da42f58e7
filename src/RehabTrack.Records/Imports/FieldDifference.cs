namespace RehabTrack.Records.Imports;

/// <summary>A field in which a file and what is kept differ. What the file leaves empty is no difference.</summary>
/// <param name="Field">Its name.</param>
/// <param name="Kept">What is kept; null for nothing.</param>
/// <param name="InFile">What the file says.</param>
public sealed record FieldDifference(string Field, string? Kept, string InFile);
