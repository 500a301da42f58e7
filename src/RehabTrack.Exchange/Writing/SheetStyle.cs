namespace RehabTrack.Exchange.Writing;

/// <summary>How a sheet is written, for the spreadsheet that will open it.</summary>
public enum SheetStyle
{
    /// <summary>Commas between cells, decimal point.</summary>
    Comma,

    /// <summary>Semicolons between cells, decimal comma: what spreadsheets expect where the comma is the decimal mark.</summary>
    Semicolon,
}
