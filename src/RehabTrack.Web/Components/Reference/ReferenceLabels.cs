using RehabTrack.Rechecks.Quantities;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Reference;

/// <summary>What pages call the rows of the reference tables.</summary>
public static class ReferenceLabels
{
    /// <summary>The row in plain words.</summary>
    /// <param name="table">The table, as <c>trend</c>.</param>
    /// <param name="row">The row, as <c>acutePhaseDays</c>.</param>
    public static string Of(string table, string row) =>
        ReferenceTexts.ResourceManager.GetString(KeyOf(table, row), TextCulture.Default) ?? row;

    /// <summary>Whether there are plain words for the row.</summary>
    public static bool Has(string table, string row) =>
        ReferenceTexts.ResourceManager.GetString(KeyOf(table, row), TextCulture.Default) is not null;

    /// <summary>The value with its unit.</summary>
    public static string Value(ReferenceValue row)
    {
        ArgumentNullException.ThrowIfNull(row);
        string number = Figures.Number(row.Value, "0.####");
        return row.Unit switch
        {
            "1" => number,
            "cm2" => number + "\u00a0cm²",
            "cm3" => number + "\u00a0cm³",
            "d" => Figures.Days((int)row.Value),
            _ => number + "\u00a0" + row.Unit,
        };
    }

    private static string KeyOf(string table, string row) => $"{table.Replace('-', '_')}_{row}";
}
