namespace RehabTrack.Reports.Pictures;

/// <summary>The table behind a picture: everything that the picture shows, in figures and words.</summary>
/// <param name="Caption">What the table is.</param>
/// <param name="Columns">The columns; the first heads its row.</param>
/// <param name="Rows">The rows, each with a cell a column.</param>
public sealed record DrawingTable(string Caption, IReadOnlyList<DrawingColumn> Columns, IReadOnlyList<IReadOnlyList<string>> Rows);
