using System.Text;
using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Exchange.Tests.Sheets;

public sealed class DialectTests
{
    public static TheoryData<string, string, string, string> Dialects()
    {
        TheoryData<string, string, string, string> dialects = [];
        foreach (string separator in (string[])[";", ",", "\t"])
        {
            foreach (string mark in (string[])[".", ","])
            {
                foreach (string lineEnd in (string[])["\n", "\r\n", "\r"])
                {
                    foreach (string encoding in (string[])["utf-8", "utf-8 with mark", "utf-16 le", "utf-16 be", "windows-1252"])
                    {
                        dialects.Add(separator, mark, lineEnd, encoding);
                    }
                }
            }
        }

        return dialects;
    }

    [Theory]
    [MemberData(nameof(Dialects))]
    public void Every_separator_decimal_mark_line_end_and_encoding_reads_the_same(
        string separator,
        string mark,
        string lineEnd,
        string encoding
    )
    {
        string text =
            string.Join(lineEnd, SheetText.Small.Replace("Alder", "Ålder", StringComparison.Ordinal).TrimEnd('\n').Split('\n').Select(Line))
            + lineEnd;

        SheetResult result = SheetText.ReadBytes(Encode(text, encoding));

        Assert.Null(result.FileProblem);
        Assert.Empty(result.Rejected);
        CaseFile file = Assert.Single(result.Cases);
        Assert.Equal("Ålder", file.Horse.Name);
        Assert.Equal([1.25, 1.5, 1.4], result.Readings().Select(reading => reading.LigamentArea!.Value.Value));
        Assert.Equal([0, 0.45, 0.3], result.Readings().Select(reading => reading.LesionArea.MeasuredArea!.Value.Value));
        Assert.Equal(["2", "3", "4"], result.Readings().Select(reading => reading.Id));
        Assert.Equal(encoding == "windows-1252", result.Cautions.Any(caution => caution.Problem.Code == "encoding-guessed"));

        string Line(string line) => string.Join(separator, line.Split(',').Select(cell => Number(cell)));

        string Number(string cell)
        {
            string marked = cell.Length > 1 && char.IsDigit(cell[0]) ? cell.Replace(".", mark, StringComparison.Ordinal) : cell;
            return marked.Contains(separator, StringComparison.Ordinal) ? $"\"{marked}\"" : marked;
        }
    }

    [Fact]
    public void A_row_is_named_by_the_line_of_the_file_on_which_it_starts()
    {
        SheetResult result = SheetText.ReadRows(
            "case;part;examination_date;level_cm;ligament_area_cm2;note",
            "C1;body;2026-01-10;20;1.2;\"first line",
            "second line with \"\"quotes\"\"; and a semicolon\"",
            "",
            "C1;body;2026-01-10;22;1.3;"
        );

        Assert.Equal([2, 5], result.Readings().Select(reading => result.RowOfReading[reading.Id]));
        Assert.Equal("first line\nsecond line with \"quotes\"; and a semicolon", result.Readings()[0].Note);
    }

    [Theory]
    [InlineData("CASE;Part;Examination Date;Level-cm;LIGAMENT AREA CM2")]
    [InlineData(" case ; part ; examinationdate ; level cm ; ligament_area-cm2 ")]
    [InlineData("\"case\";\"part\";\"examination_date\";\"level_cm\";\"ligament_area_cm2\";;;")]
    public void Headings_are_read_without_regard_to_case_space_hyphen_and_underscore(string headings)
    {
        SheetResult result = SheetText.ReadRows(headings, "C1;body;2026-01-10;20;1.2;;;");

        Assert.False(result.NeedsMapping);
        Assert.Empty(result.Rejected);
        Assert.Single(result.Readings());
    }

    [Fact]
    public void Empty_lines_and_columns_at_the_end_are_passed_over()
    {
        SheetResult result = SheetText.Read(SheetText.Small.Replace("\n", ",,,\n", StringComparison.Ordinal) + ",,,,,,,,,,\n\n\n");

        Assert.Empty(result.Rejected);
        Assert.Equal(3, result.Rows);
        Assert.Equal(3, result.Readings().Count);
    }

    [Fact]
    public void A_first_line_that_names_the_separator_is_obeyed_and_counted_as_a_line()
    {
        SheetResult result = SheetText.Read("sep=;\n" + SheetText.Small.Replace(',', ';'));

        Assert.Equal([3, 4, 5], result.Readings().Select(reading => result.RowOfReading[reading.Id]));
    }

    [Fact]
    public void A_heading_that_is_not_known_is_passed_over_with_a_caution()
    {
        SheetResult result = SheetText.ReadRows(
            "case;part;examination_date;level_cm;ligament_area_cm2;stable",
            "C1;body;2026-01-10;20;1.2;box 4"
        );

        Assert.Empty(result.Rejected);
        Assert.Equal("column-not-read", Assert.Single(result.Cautions).Problem.Code);
        Assert.Equal("stable", result.Cautions[0].Column);
    }

    private static byte[] Encode(string text, string encoding)
    {
        Encoding chosen = encoding switch
        {
            "utf-8" => new UTF8Encoding(false),
            "utf-8 with mark" => new UTF8Encoding(true),
            "utf-16 le" => new UnicodeEncoding(false, true),
            "utf-16 be" => new UnicodeEncoding(true, true),
            _ => CodePagesEncodingProvider.Instance.GetEncoding(1252)!,
        };
        return [.. chosen.GetPreamble(), .. chosen.GetBytes(text)];
    }
}
