using CsvHelper;
using RehabTrack.Exchange.Rows;

namespace RehabTrack.Exchange.Writing;

/// <summary>
/// Writes a table row by row as CSV, UTF-8 with a byte-order mark, commas between cells. A cell that a spreadsheet would take for a
/// formula gets an apostrophe before it.
/// </summary>
public sealed class TableWriter : IDisposable
{
    private readonly CsvWriter writer;

    /// <summary>Begins a table with its headings.</summary>
    /// <param name="stream">Takes the table; left open.</param>
    /// <param name="headings">The headings.</param>
    public TableWriter(Stream stream, IEnumerable<string> headings)
    {
        writer = CsvWriter.Create(
            stream,
            new CsvWriterOptions
            {
                Separator = ',',
                HasHeader = false,
                WriteByteOrderMark = true,
            },
            leaveOpen: true
        );
        Write(headings);
    }

    /// <summary>Writes one row.</summary>
    /// <param name="cells">Its cells.</param>
    public void Write(IEnumerable<string> cells)
    {
        ArgumentNullException.ThrowIfNull(cells);
        foreach (string cell in cells)
        {
            writer.WriteField(CellText.Guard(cell));
        }

        writer.EndRecord();
    }

    /// <inheritdoc />
    public void Dispose()
    {
        writer.Flush();
        writer.Dispose();
    }
}
