namespace RehabTrack.Reports.Paper;

/// <summary>A column of a table.</summary>
/// <param name="Title">What stands over it.</param>
/// <param name="IsFigure">Whether its cells are figures, which stand to the right.</param>
public sealed record PaperColumn(string Title, bool IsFigure = false);
