using System.Text;
using RehabTrack.Exchange.Rows;
using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Exchange.Tests;

/// <summary>Small sheets for tests.</summary>
internal static class SheetText
{
    /// <summary>A right sheet of one case, two examinations, three rows.</summary>
    public const string Small =
        "case,horse,limb,part,examination_date,level_cm,ligament_area_cm2,lesion_area_cm2\n"
        + "C1,Alder,LH,body,2026-01-10,20,1.25,0\n"
        + "C1,Alder,LH,body,2026-01-10,22,1.5,0.45\n"
        + "C1,Alder,LH,body,2026-03-10,22,1.4,0.3\n";

    public static readonly DateOnly Today = new(2026, 6, 1);

    public static SheetResult Read(string text, DateOnly? today = null) => ReadBytes(new UTF8Encoding(false).GetBytes(text), today);

    public static SheetResult ReadBytes(byte[] bytes, DateOnly? today = null)
    {
        using MemoryStream stream = new(bytes);
        return SheetImport.Read(stream, today ?? Today);
    }

    /// <summary>One row over the columns of <see cref="Small"/> and any others, by name.</summary>
    public static SheetResult ReadRow(params (string Column, string Value)[] cells)
    {
        Dictionary<string, string> row = new(StringComparer.Ordinal)
        {
            [SheetColumns.Case] = "C1",
            [ReadingFields.Part] = "body",
            [ReadingFields.ExaminationDate] = "2026-01-10",
            [ReadingFields.Level] = "20",
            [ReadingFields.LigamentArea] = "1.5",
        };
        foreach ((string column, string value) in cells)
        {
            row[column] = value;
        }

        return Read($"{string.Join(';', row.Keys)}\n{string.Join(';', row.Values)}\n");
    }

    /// <summary>Rows of a case below the headings given.</summary>
    public static SheetResult ReadRows(string headings, params string[] rows) => Read($"{headings}\n{string.Join('\n', rows)}\n");

    /// <summary>All readings of a result in the order of the file.</summary>
    public static IReadOnlyList<Reading> Readings(this SheetResult result) =>
        [
            .. result
                .Cases.SelectMany(file => file.Course.Examinations)
                .SelectMany(examination => examination.Readings)
                .OrderBy(reading => result.RowOfReading[reading.Id]),
        ];
}
