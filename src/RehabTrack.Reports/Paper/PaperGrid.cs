namespace RehabTrack.Reports.Paper;

/// <summary>A table with the widths of its columns and the lines of its cells. One that is short is not broken.</summary>
internal sealed class PaperGrid : PaperPart
{
    /// <summary>The tallest that stays whole: a quarter of a page.</summary>
    private const double TallestWhole = (PaperFlow.Bottom - PaperFlow.Top) / 4;

    private const int RowsToBegin = 3;
    private const double CellGap = 11;
    private const double RowPad = 2.5;

    private static readonly PaperStyle Cell = new(8.5, 11.5, false, PaperColour.Ink);
    private static readonly PaperStyle Head = new(8, 10.5, true, PaperColour.Soft);

    private readonly PaperTable _table;
    private readonly double[] _widths;
    private readonly IReadOnlyList<string>[]? _head;
    private readonly IReadOnlyList<string>[][] _rows;

    public PaperGrid(PaperTable table, PaperLetters letters)
    {
        _table = table;
        _widths = PaperColumns.Share(
            [.. table.Columns.Select((column, index) => Wanted(table, column, index, letters))],
            PaperFlow.Width - (CellGap * (table.Columns.Count - 1))
        );
        _head = table.Columns.All(column => column.Title.Length == 0)
            ? null
            : [.. table.Columns.Select((column, index) => letters.Lines(column.Title, Head, _widths[index]))];
        _rows =
        [
            .. table.Rows.Select(row =>
                row.GoesAcross(table.Columns.Count)
                    ? (IReadOnlyList<string>[])[letters.Lines(row.Cells[0], Cell, PaperFlow.Width)]
                    : [.. row.Cells.Select((cell, index) => letters.Lines(cell, Cell, _widths[index]))]
            ),
        ];
    }

    /// <inheritdoc />
    public override bool KeepsNext => false;

    /// <inheritdoc />
    public override double Least
    {
        get
        {
            double whole = HeadHeight + _rows.Sum(row => RowHeight(LinesOf(row)));
            return whole <= TallestWhole ? whole : HeadHeight + _rows.Take(RowsToBegin).Sum(row => RowHeight(LinesOf(row)));
        }
    }

    private double HeadHeight => _head is null ? 0 : (LinesOf(_head) * Head.LinePoints) + (2 * PaperFlow.Hairline);

    /// <inheritdoc />
    public override void PutOn(PaperFlow flow)
    {
        PutHead(flow);
        foreach (IReadOnlyList<string>[] row in _rows)
        {
            PutRow(flow, row);
        }

        flow.Skip(PaperFlow.Gap);
    }

    private static (double Line, double Word) Wanted(PaperTable table, PaperColumn column, int index, PaperLetters letters)
    {
        (double line, double word) = letters.Widest(column.Title, Head);
        foreach (PaperRow row in table.Rows.Where(row => !row.GoesAcross(table.Columns.Count)))
        {
            (double cellLine, double cellWord) = letters.Widest(row.Cells[index], Cell);
            (line, word) = (Math.Max(line, cellLine), Math.Max(word, cellWord));
        }

        return (line, word);
    }

    private static int LinesOf(IReadOnlyList<string>[] cells) => cells.Max(cell => cell.Count);

    private static double RowHeight(int lines) => (lines * Cell.LinePoints) + (2 * RowPad) + PaperFlow.Hairline;

    private void PutHead(PaperFlow flow)
    {
        if (_head is null)
        {
            return;
        }

        PutCells(flow, _head, Head);
        flow.Rule(2 * PaperFlow.Hairline, PaperColour.Line);
        flow.Skip(2 * PaperFlow.Hairline);
    }

    // A row goes on on the next page only where it is taller than a page.
    private void PutRow(PaperFlow flow, IReadOnlyList<string>[] row)
    {
        int lines = LinesOf(row);
        if (RowHeight(lines) > flow.Left)
        {
            Turn(flow);
        }

        for (int put = 0; put < lines; )
        {
            int fitting = (int)((flow.Left - RowHeight(0)) / Cell.LinePoints);
            if (fitting < 1)
            {
                Turn(flow);
                continue;
            }

            int now = Math.Min(fitting, lines - put);
            flow.Skip(RowPad);
            PutCells(flow, [.. row.Select(cell => (IReadOnlyList<string>)[.. cell.Skip(put).Take(now)])], Cell);
            flow.Skip(RowPad);
            put += now;
        }

        flow.Rule(PaperFlow.Hairline, PaperColour.Line);
        flow.Skip(PaperFlow.Hairline);
    }

    private void Turn(PaperFlow flow)
    {
        if (!flow.IsFresh)
        {
            flow.Turn();
            PutHead(flow);
        }
    }

    private void PutCells(PaperFlow flow, IReadOnlyList<string>[] cells, PaperStyle style)
    {
        double left = PaperFlow.Side;
        for (int index = 0; index < cells.Length; index++)
        {
            bool isRight = cells.Length == _widths.Length && _table.Columns[index].IsFigure;
            foreach ((int line, string text) in cells[index].Index())
            {
                double indent = isRight ? _widths[index] - PaperLetters.Width(text, style) : 0;
                flow.Words(text, style, left + indent, line * style.LinePoints);
            }

            left += _widths[index] + CellGap;
        }

        flow.Skip(LinesOf(cells) * style.LinePoints);
    }
}
