namespace RehabTrack.Reports.Paper;

/// <summary>A row of a table: a cell for each column, or one that goes across all.</summary>
/// <param name="Cells">The texts.</param>
public sealed record PaperRow(params IReadOnlyList<string> Cells)
{
    /// <summary>Whether its one cell goes across so many columns.</summary>
    internal bool GoesAcross(int columns) => Cells.Count == 1 && columns > 1;
}
