using System.Globalization;
using CsvHelper;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Sheets;

/// <summary>Reads the records of a sheet one after another, in memory bounded by the longest record that it accepts.</summary>
public sealed class SheetRecordReader : IDisposable
{
    private const int LongestRecordBytes = 1024 * 1024;
    private readonly CsvReader _reader;
    private readonly char _separator;
    private bool _malformed;

    /// <summary>Reads from a text.</summary>
    /// <param name="text">The text; disposed with the reader.</param>
    /// <param name="separator">The separator of cells.</param>
    public SheetRecordReader(TextReader text, char separator)
    {
        _separator = separator;
        _reader = CsvReader.Create(
            text,
            new CsvReaderOptions
            {
                Separator = separator,
                HasHeader = false,
                TrackLineNumbers = true,
                PoolStrings = true,
                MaxRecordSize = LongestRecordBytes,
                OnMalformedRecord = _ => _malformed = true,
            }
        );
    }

    /// <summary>Opens a file.</summary>
    /// <param name="stream">The file, read from its start and left open.</param>
    /// <param name="format">As the probe found it.</param>
    public static SheetRecordReader Open(Stream stream, SheetFormat format)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(format);
        stream.Position = 0;
        return new SheetRecordReader(
            new StreamReader(stream, format.Encoding, detectEncodingFromByteOrderMarks: true, bufferSize: 64 * 1024, leaveOpen: true),
            format.Separator
        );
    }

    /// <summary>The record read last.</summary>
    public SheetRecord Record { get; private set; }

    /// <summary>Why reading ended before the end of the file; null when it did not.</summary>
    public Problem? Problem { get; private set; }

    /// <summary>Reads the next record that holds anything and is no separator line; false at the end, or when <see cref="Problem"/> says why it cannot go on.</summary>
    public bool Read()
    {
        while (Problem is null && Advance())
        {
            bool separatorLine = Record.Row == 1 && SeparatorLine(string.Join(_separator, Record.Cells)) is not null;
            if (!separatorLine && !Record.IsBlank)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The separator that a first line <c>sep=;</c> names; null for any other line.</summary>
    /// <param name="line">The line.</param>
    public static char? SeparatorLine(string line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return line.Trim('"', ' ') is ['s' or 'S', 'e' or 'E', 'p' or 'P', '=', (';' or ',' or '\t') and var separator] ? separator : null;
    }

    /// <inheritdoc />
    public void Dispose() => _reader.Dispose();

    private bool Advance()
    {
        _malformed = false;
        try
        {
            if (!_reader.Read())
            {
                return false;
            }
        }
        catch (CsvFormatException)
        {
            Problem = new Problem("", "record-too-long", Text(Record.Row + 1));
            return false;
        }

        int row = (int)Math.Min(_reader.LineNumber, int.MaxValue);
        // A stray quote within one line is harmless; one that swallowed line ends is not.
        if (_malformed && _reader.RawRecord.IndexOfAny((byte)'\r', (byte)'\n') >= 0)
        {
            Problem = new Problem("", "quote-not-closed", Text(row));
            return false;
        }

        Record = new SheetRecord(row, _reader.Current.ToArray());
        return true;
    }

    private static string Text(int row) => row.ToString(CultureInfo.InvariantCulture);
}
