namespace RehabTrack.Reports.Pictures;

/// <summary>A column of the table behind a picture.</summary>
/// <param name="Heading">Its heading, with the unit where it has one.</param>
/// <param name="IsNumber">Whether it holds figures, which stand to the right.</param>
public sealed record DrawingColumn(string Heading, bool IsNumber);
