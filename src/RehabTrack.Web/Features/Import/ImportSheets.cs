using System.Globalization;
using System.Text;
using RehabTrack.Exchange;
using RehabTrack.Exchange.Rows;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Import;

/// <summary>Sheets that a person takes away: what went wrong.</summary>
public static class ImportSheets
{
    private static readonly UTF8Encoding WithMark = new(encoderShouldEmitUTF8Identifier: true);

    /// <summary>The rows that could not be taken: line, column, value and what was expected.</summary>
    public static byte[] Wrong(SheetResult sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        StringBuilder text = new();
        Line(text, ImportPage.ColumnLine, ImportPage.ColumnColumn, ImportPage.ColumnValue, ImportPage.ColumnExpected);
        foreach (RejectedRow row in sheet.Rejected)
        {
            Line(text, row.Row.ToString(CultureInfo.InvariantCulture), row.Column, row.Value, ProblemSentences.Of(row.Problem));
        }

        return [.. WithMark.Preamble, .. WithMark.GetBytes(text.ToString())];
    }

    private static void Line(StringBuilder text, params string[] cells) => text.AppendJoin(',', cells.Select(Cell)).Append("\r\n");

    private static string Cell(string value)
    {
        // A spreadsheet must not run what stands in a file that somebody else wrote.
        string guarded = CellText.Guard(value);
        return guarded.AsSpan().IndexOfAny(",\"\r\n;") < 0 ? guarded : $"\"{guarded.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }
}
