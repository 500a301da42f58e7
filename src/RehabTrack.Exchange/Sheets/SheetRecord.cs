namespace RehabTrack.Exchange.Sheets;

/// <summary>One record of a sheet.</summary>
/// <param name="Row">The line of the file on which the record starts; the first line is 1.</param>
/// <param name="Cells">The cells as they stand in the file, without quotes.</param>
public readonly record struct SheetRecord(int Row, IReadOnlyList<string> Cells)
{
    /// <summary>The cell of a column, trimmed; empty when the record is shorter.</summary>
    public string CellAt(int index) => index < Cells.Count ? Cells[index].Trim() : "";

    /// <summary>Whether no cell holds anything.</summary>
    public bool IsBlank
    {
        get
        {
            foreach (string cell in Cells)
            {
                if (!string.IsNullOrWhiteSpace(cell))
                {
                    return false;
                }
            }

            return true;
        }
    }
}
