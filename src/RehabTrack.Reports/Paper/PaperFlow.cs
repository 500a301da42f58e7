namespace RehabTrack.Reports.Paper;

/// <summary>Lets the parts of a sheet fall on pages of A4, in points.</summary>
internal sealed class PaperFlow(PaperLetters letters)
{
    /// <summary>Width of A4.</summary>
    public const double PageWidth = 595.28;

    /// <summary>Height of A4.</summary>
    public const double PageHeight = 841.89;

    /// <summary>White at the left and the right.</summary>
    public const double Side = 51;

    /// <summary>Where the foot of a page begins.</summary>
    public const double Bottom = PageHeight - 62;

    private const double Top = 51;
    private const double Room = PageWidth - (2 * Side);
    private const double Gap = 6;
    private const double CellGap = 11;
    private const double RowPad = 2.5;
    private const double Hairline = 0.6;
    private const double CautionBar = 2.5;
    private const int LinesWithHeading = 3;

    private static readonly PaperStyle Plain = new(10, 14, false, PaperColour.Ink);
    private static readonly PaperStyle Soft = new(9, 12.5, false, PaperColour.Soft);
    private static readonly PaperStyle Strong = new(10.5, 14.5, true, PaperColour.Ink);
    private static readonly PaperStyle Cell = new(8.5, 11.5, false, PaperColour.Ink);
    private static readonly PaperStyle CellHead = new(8, 10.5, true, PaperColour.Soft);

    private double _y = Top;

    /// <summary>The pages so far; the last one is being filled.</summary>
    public List<PaperPage> Pages { get; } = [new()];

    private PaperPage Page => Pages[^1];

    /// <summary>Puts a part below what stands.</summary>
    public void Put(PaperBlock block)
    {
        switch (block)
        {
            case PaperHeading heading:
                Put(heading);
                break;
            case PaperText text:
                Put(text);
                break;
            case PaperTable table:
                Put(table);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block, "This part has no place on paper yet.");
        }
    }

    private void Put(PaperHeading heading)
    {
        PaperStyle style = heading.Rank switch
        {
            1 => new PaperStyle(19, 24, true, PaperColour.Ink),
            2 => new PaperStyle(13, 17, true, PaperColour.Ink),
            _ => new PaperStyle(10.5, 14.5, true, PaperColour.Ink),
        };
        IReadOnlyList<string> lines = letters.Lines(heading.Text, style, Room);
        double above = _y > Top ? 2 * Gap : 0;
        Need(above + (lines.Count * style.LinePoints) + (LinesWithHeading * Plain.LinePoints));
        _y += _y > Top ? above : 0;
        if (heading.Rank <= 2)
        {
            bool isFirst = heading.Rank == 1;
            Page.Rules.Add(new PaperRule(Side, _y, Room, isFirst ? 2 : Hairline, isFirst ? PaperColour.Accent : PaperColour.Line));
            _y += Gap;
        }

        foreach (string line in lines)
        {
            Line(line, style, Side);
        }

        _y += Gap / 2;
    }

    private void Put(PaperText text)
    {
        PaperStyle style = text.Tone switch
        {
            PaperTone.Soft => Soft,
            PaperTone.Strong => Strong,
            _ => Plain,
        };
        double indent = text.Tone == PaperTone.Caution ? Gap + CautionBar : 0;
        foreach (string line in letters.Lines(text.Text, style, Room - indent))
        {
            if (indent > 0)
            {
                Need(style.LinePoints);
                Page.Rules.Add(new PaperRule(Side, _y, CautionBar, style.LinePoints, PaperColour.Amber));
            }

            Line(line, style, Side + indent);
        }

        _y += Gap;
    }

    private void Put(PaperTable table)
    {
        bool hasHead = table.Columns.Any(column => column.Title.Length > 0);
        double[] widths = PaperColumns.Share(
            [.. table.Columns.Select((column, index) => Wanted(table, column, index))],
            Room - (CellGap * (table.Columns.Count - 1))
        );
        if (hasHead)
        {
            PutHead(table, widths);
        }

        foreach (PaperRow row in table.Rows)
        {
            bool goesAcross = row.Cells.Count == 1 && table.Columns.Count > 1;
            PutRow(
                goesAcross
                    ? [letters.Lines(row.Cells[0], Cell, Room)]
                    : [.. row.Cells.Select((cell, index) => letters.Lines(cell, Cell, widths[index]))],
                table,
                goesAcross ? [Room] : widths,
                hasHead
            );
        }

        _y += Gap;
    }

    private (double Line, double Word) Wanted(PaperTable table, PaperColumn column, int index)
    {
        (double line, double word) = letters.Widest(column.Title, CellHead);
        foreach (PaperRow row in table.Rows.Where(row => row.Cells.Count == table.Columns.Count))
        {
            (double cellLine, double cellWord) = letters.Widest(row.Cells[index], Cell);
            (line, word) = (Math.Max(line, cellLine), Math.Max(word, cellWord));
        }

        return (line, word);
    }

    private void PutHead(PaperTable table, double[] widths)
    {
        IReadOnlyList<string>[] titles = [.. table.Columns.Select((column, index) => letters.Lines(column.Title, CellHead, widths[index]))];
        double height = titles.Max(lines => lines.Count) * CellHead.LinePoints;
        Need(height + (LinesWithHeading * Cell.LinePoints));
        Cells(titles, table, widths, CellHead, height);
        Page.Rules.Add(new PaperRule(Side, _y, Room, 2 * Hairline, PaperColour.Line));
        _y += 2 * Hairline;
    }

    private void PutRow(IReadOnlyList<string>[] cells, PaperTable table, double[] widths, bool hasHead)
    {
        int lines = cells.Max(cell => cell.Count);
        int begun = 0;
        if (Height(lines) > Bottom - _y && Height(lines) <= Bottom - Top)
        {
            Turn(table, widths, hasHead && cells.Length > 1);
        }

        while (begun < lines)
        {
            int fitting = (int)Math.Floor((Bottom - _y - (2 * RowPad)) / Cell.LinePoints);
            if (fitting < 1)
            {
                Turn(table, widths, hasHead && cells.Length > 1);
                fitting = 1;
            }

            int now = Math.Min(fitting, lines - begun);
            Cells([.. cells.Select(cell => (IReadOnlyList<string>)[.. cell.Skip(begun).Take(now)])], table, widths, Cell, Height(now));
            begun += now;
        }

        Page.Rules.Add(new PaperRule(Side, _y, Room, Hairline, PaperColour.Line));
        _y += Hairline;
    }

    private static double Height(int lines) => (lines * Cell.LinePoints) + (2 * RowPad);

    private void Turn(PaperTable table, double[] widths, bool withHead)
    {
        NewPage();
        if (withHead)
        {
            PutHead(table, widths);
        }
    }

    private void Cells(IReadOnlyList<string>[] cells, PaperTable table, double[] widths, PaperStyle style, double height)
    {
        double left = Side;
        double top = _y + ((height - (cells.Max(cell => cell.Count) * style.LinePoints)) / 2);
        for (int index = 0; index < cells.Length; index++)
        {
            bool isRight = cells.Length > 1 && table.Columns[index].IsFigure;
            for (int line = 0; line < cells[index].Count; line++)
            {
                string text = cells[index][line];
                double indent = isRight ? widths[index] - PaperLetters.Width(text, style) : 0;
                Words(text, left + indent, top + (line * style.LinePoints), style);
            }

            left += widths[index] + CellGap;
        }

        _y += height;
    }

    private void Line(string line, PaperStyle style, double left)
    {
        Need(style.LinePoints);
        Words(line, left, _y, style);
        _y += style.LinePoints;
    }

    private void Words(string text, double left, double top, PaperStyle style)
    {
        if (text.Length > 0)
        {
            Page.Words.Add(new PaperWords(text, left, top + style.Baseline, style));
        }
    }

    private void Need(double height)
    {
        if (_y + height > Bottom && _y > Top)
        {
            NewPage();
        }
    }

    private void NewPage()
    {
        Pages.Add(new PaperPage());
        _y = Top;
    }
}
