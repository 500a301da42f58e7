namespace RehabTrack.Web.Features.Examinations.Worksheets;

/// <summary>The names of a worksheet's fields on the page: the header's own, and row and column for a cell.</summary>
public static class WorksheetFields
{
    private const char Between = '|';

    /// <summary>Name of a field above the grid.</summary>
    public static string Of(HeaderField field) => field.ToString();

    /// <summary>Name of a cell.</summary>
    public static string Of(string rowKey, EntryColumn column) => $"{rowKey}{Between}{column}";

    /// <summary>All texts of a worksheet by the names of their fields.</summary>
    public static IReadOnlyDictionary<string, string> TextsOf(Worksheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        Dictionary<string, string> texts = new(StringComparer.Ordinal);
        foreach (HeaderField field in Enum.GetValues<HeaderField>())
        {
            texts[Of(field)] = sheet[field];
        }

        foreach (EntryRow row in sheet.Grid.Rows)
        {
            foreach (EntryColumn column in EntryColumns.All)
            {
                texts[Of(row.Key, column)] = row[column];
            }
        }

        return texts;
    }

    /// <summary>
    /// The worksheet with these texts in their fields. A row that is not there is added, so that nothing typed is lost; a name that is no
    /// field is passed over.
    /// </summary>
    /// <param name="sheet">The worksheet.</param>
    /// <param name="texts">Texts by field.</param>
    /// <param name="halfTyped">The field that is still being typed into: its words are not written out yet.</param>
    public static Worksheet Apply(Worksheet sheet, IReadOnlyDictionary<string, string> texts, string? halfTyped = null)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(texts);
        foreach ((string name, string text) in texts)
        {
            string[] parts = name.Split(Between);
            if (parts.Length == 1 && Enum.TryParse(name, out HeaderField field) && Enum.IsDefined(field))
            {
                sheet = sheet.With(field, text);
            }
            else if (parts.Length == 2 && Enum.TryParse(parts[1], out EntryColumn column) && Enum.IsDefined(column))
            {
                EntryGrid grid = sheet.Grid.Find(parts[0]) is null ? sheet.Grid.InsertBelow(null, parts[0]) : sheet.Grid;
                sheet = sheet.With(name == halfTyped ? grid.TypeHalf(parts[0], column, text) : grid.Type(parts[0], column, text));
            }
        }

        return sheet;
    }
}
