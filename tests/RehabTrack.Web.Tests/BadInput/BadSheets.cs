using System.Globalization;
using System.Text;

namespace RehabTrack.Web.Tests.BadInput;

/// <summary>Sheets that are thin, odd or too much, as a person might hand them in.</summary>
internal static class BadSheets
{
    private const string Columns =
        "case;horse;limb;structure;part;onset_date;examination_date;examination;measurer;level_cm;ligament_area_cm2;lesion_area_cm2;lesion_percent\n";

    private static readonly DateOnly First = new(2026, 1, 12);

    /// <summary>By name.</summary>
    public static IReadOnlyDictionary<string, string> All { get; } =
        new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["one examination"] = Sheet(1, _ => Course(1)),
            ["one examination of one level"] = Sheet(1, _ => [("20", "1.5", "0.4", "")]),
            ["two on one day"] = Columns + Rows(0, "morning", Course(1)) + Rows(0, "evening", Course(0.4)),
            ["two on one day and one later"] =
                Columns + Rows(0, "morning", Course(1)) + Rows(0, "evening", Course(1.4)) + Rows(60, "", Course(0.4)),
            ["one day apart"] = Sheet(3, i => Course(i == 0 ? 0.05 : 1.5 * i), days: 1),
            ["all zero"] = Sheet(5, _ => Course(0)),
            ["a lesion, then all zero"] = Sheet(5, i => Course(i == 0 ? 1 : 0)),
            ["levels in reverse"] = Sheet(4, i => Course(Math.Pow(0.7, i)).Reverse()),
            ["equal levels"] = Sheet(4, i => [("20", "1.5", "0.5", ""), ("20", "1.5", "0.4", ""), ("22", "1.5", "0", "")]),
            ["a lesion at the end level"] = Sheet(4, _ => [("10", "1.4", "0", ""), ("12", "1.5", "0.3", ""), ("14", "1.5", "0.6", "")]),
            ["percent over 100"] = Sheet(4, i => [("18", "1.4", "", "0"), ("20", "1.5", "", i == 3 ? "140" : "40")]),
            ["lesion area without ligament area"] = Sheet(
                4,
                i => [("18", "", "0", ""), ("20", "", Text(0.5 - (0.1 * i)), ""), ("22", "", "0", "")]
            ),
            ["forty examinations"] = Sheet(40, i => Course(Math.Pow(0.97, i)), days: 7),
            ["two hundred levels"] = Sheet(
                3,
                _ => Enumerable.Range(0, 200).Select(level => (Text(0.3 * level), "1.5", level is > 90 and < 110 ? "0.5" : "0", ""))
            ),
        };

    /// <summary>What is not taken, and why: the column and the reason of the first row refused.</summary>
    public static IReadOnlyDictionary<string, (string Column, string Reason)> Refused { get; } =
        new Dictionary<string, (string, string)>(StringComparer.Ordinal)
        {
            ["equal levels"] = ("level_cm", "The same reading stands on line 2 already"),
            ["percent over 100"] = ("lesion_percent", "140 % cannot be: the share of the lesion "),
        };

    private static string Sheet(int examinations, Func<int, IEnumerable<(string, string, string, string)>> levels, int days = 60) =>
        Columns + string.Concat(Enumerable.Range(0, examinations).Select(index => Rows(days * index, "", levels(index))));

    private static string Rows(int day, string name, IEnumerable<(string Level, string Ligament, string Lesion, string Percent)> levels)
    {
        StringBuilder rows = new();
        foreach ((string level, string ligament, string lesion, string percent) in levels)
        {
            rows.Append(
                CultureInfo.InvariantCulture,
                $"Odd LF;Odd;LF;suspensory-ligament;body;{First.AddDays(-60):yyyy-MM-dd};{First.AddDays(day):yyyy-MM-dd};{name};RV;{level};{ligament};{lesion};{percent}\n"
            );
        }

        return rows.ToString();
    }

    private static IEnumerable<(string, string, string, string)> Course(double size) =>
        [
            ("10", "1.2", "0", ""),
            ("14", "1.3", Text(0.1 * size), ""),
            ("18", "1.5", Text(0.45 * size), ""),
            ("22", "1.4", Text(0.3 * size), ""),
            ("26", "1.2", "0", ""),
        ];

    private static string Text(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}
