using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Import;

/// <summary>What pages call the columns of the import sheet.</summary>
public static class ColumnNames
{
    /// <summary>As "ligament area" for <c>ligament_area_cm2</c>; a name that is no column stays as it is.</summary>
    public static string Of(string column)
    {
        ArgumentNullException.ThrowIfNull(column);
        return ImportColumns.ResourceManager.GetString("column_" + column, TextCulture.Default) ?? column;
    }

    /// <summary>Whether there is a name for the column.</summary>
    public static bool Has(string column) => ImportColumns.ResourceManager.GetString("column_" + column, TextCulture.Default) is not null;

    /// <summary>A field of a difference, as "Body 12.5: ligament area" for <c>readings[Body 12.5].ligament_area_cm2</c>.</summary>
    public static string OfField(string field)
    {
        ArgumentNullException.ThrowIfNull(field);
        int open = field.IndexOf('[', StringComparison.Ordinal);
        int close = field.LastIndexOf("].", StringComparison.Ordinal);
        return open > 0 && close > open
            ? string.Format(TextCulture.Default, ImportPage.FieldOfReading, field[(open + 1)..close], Of(field[(close + 2)..]))
            : Of(field);
    }
}
