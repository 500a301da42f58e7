using System.Text;
using System.Text.Json;
using RehabTrack.Exchange.Rows;
using RehabTrack.Exchange.Sheets;
using RehabTrack.Exchange.Writing;
using RehabTrack.Naughty;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Tests.Writing;

/// <summary>Text that has broken other programs, through the sheet and back.</summary>
public sealed class NaughtyCellTests
{
    /// <summary>What a cell can hold: trimmed, some letters long at most, with something that is a letter of a name.</summary>
    public static IReadOnlyList<string> Cells =>
        [
            .. NaughtyStrings
                .All.Select(text => text.Trim().ReplaceLineEndings("\n"))
                .Where(text => text.Length is > 0 and <= 200)
                .Distinct(StringComparer.Ordinal),
        ];

    public static TheoryData<SheetStyle> Styles => [.. Enum.GetValues<SheetStyle>()];

    [Theory]
    [MemberData(nameof(Styles))]
    public void Every_text_column_comes_back_letter_by_letter(SheetStyle style)
    {
        string[] texts = [.. Cells];
        using MemoryStream sheet = new();
        CaseFileWriter.Write(sheet, texts.Select((text, at) => Case(at, text)), style);

        SheetResult read = SheetImport.Read(sheet, today: null);

        Assert.Null(read.FileProblem);
        Assert.Equal([], read.Rejected.Select(row => $"{row.Row} {row.Column}: {row.Problem.Code}"));
        Dictionary<string, CaseFile> back = read.Cases.ToDictionary(file => file.Label, StringComparer.Ordinal);
        Assert.Equal(texts.Length, back.Count);
        for (int at = 0; at < texts.Length; at++)
        {
            CaseFile file = back[$"case {at:0000}"];
            Examination examination = Assert.Single(file.Course.Examinations);
            Reading reading = Assert.Single(examination.Readings);
            Assert.Equal(
                (texts[at], texts[at], texts[at], texts[at], texts[at]),
                (file.Horse.Name, examination.Examiner, examination.Transducer, reading.Measurer, reading.Note)
            );
        }
    }

    /// <summary>OWASP ASVS 5.0, 1.2.10: = + - @ tab and NUL at the start of a cell, and the quotes and separators around it.</summary>
    [Fact]
    public void No_cell_that_is_written_begins_as_a_formula_does()
    {
        foreach (string text in NaughtyStrings.All)
        {
            string cell = CellText.Guard(text);

            Assert.False(cell is ['=' or '+' or '-' or '@' or '\t' or '\r' or '\n' or '\0', ..], text);
            Assert.Equal(text, CellText.Unguard(cell));
        }
    }

    [Fact]
    public void A_table_of_the_trail_holds_each_text_in_one_cell()
    {
        using MemoryStream stream = new();
        using (TableWriter table = new(stream, ["number", "text"]))
        {
            foreach ((int at, string text) in NaughtyStrings.All.Index())
            {
                table.Write([at.ToString(System.Globalization.CultureInfo.InvariantCulture), text]);
            }
        }

        stream.Position = 0;
        using SheetRecordReader reader = new(new StreamReader(stream, Encoding.UTF8), ',');
        Assert.True(reader.Read());
        foreach ((int at, string text) in NaughtyStrings.All.Index())
        {
            Assert.True(reader.Read(), $"{at}: {reader.Problem?.Code}");
            Assert.Equal(2, reader.Record.Cells.Count);
            Assert.Equal(text.ReplaceLineEndings("\n"), CellText.Unguard(reader.Record.Cells[1]).ReplaceLineEndings("\n"));
        }
    }

    /// <summary>The JSON of a case holds each text as it was, whatever quotes and ends of lines are in it.</summary>
    [Fact]
    public void JSON_holds_each_text_as_it_was()
    {
        foreach (string text in NaughtyStrings.All)
        {
            using JsonDocument document = JsonDocument.Parse(JsonSerializer.Serialize(Case(0, text)));

            Assert.Equal(text, document.RootElement.GetProperty("Horse").GetProperty("Name").GetString());
        }
    }

    private static CaseFile Case(int at, string text) =>
        new(
            $"case {at:0000}",
            new HorseIdentity(text, null, null),
            new CaseCourse
            {
                Id = $"case {at:0000}",
                Limb = Limb.LeftHind,
                Structure = Structure.SuspensoryLigament,
                Landmark = Landmark.PointOfHock,
                Examinations =
                [
                    new Examination
                    {
                        Id = "1",
                        Date = new DateOnly(2026, 3, 1),
                        Examiner = text,
                        Transducer = text,
                        Readings =
                        [
                            new Reading
                            {
                                Id = "1",
                                Part = Part.Body,
                                Level = new Centimetres(12),
                                LigamentArea = new SquareCentimetres(1.4),
                                LesionArea = LesionArea.Measured(new SquareCentimetres(0.4)),
                                Measurer = text,
                                Note = text,
                            },
                        ],
                    },
                ],
            }
        );
}
