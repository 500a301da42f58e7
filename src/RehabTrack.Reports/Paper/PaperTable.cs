namespace RehabTrack.Reports.Paper;

/// <summary>A table. Its columns share the width by what stands in them; its head is said again on each page that it goes on to.</summary>
/// <param name="Columns">The columns; without any title there is no head.</param>
/// <param name="Rows">The rows: each with as many cells as there are columns, or with one.</param>
public sealed record PaperTable(IReadOnlyList<PaperColumn> Columns, IReadOnlyList<PaperRow> Rows) : PaperBlock;
