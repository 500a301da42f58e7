using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Examinations;
using RehabTrack.Web.Features.Examinations.Worksheets;

namespace RehabTrack.Web.Tests.Features.Examinations;

public sealed class WorksheetReaderTests
{
    private static Reading Single(Worksheet sheet)
    {
        WorksheetReading read = WorksheetReader.Read(sheet, Entering.Terms);
        Assert.True(read.IsClean);
        return Assert.Single(read.Examination.Readings);
    }

    private static CellProblem Problem(Worksheet sheet)
    {
        WorksheetReading read = WorksheetReader.Read(sheet, Entering.Terms);
        Assert.Empty(read.Examination.Readings);
        return Assert.Single(read.CellProblems);
    }

    [Theory]
    [InlineData("1.5")]
    [InlineData("1,5")]
    [InlineData(" 1,50 ")]
    public void Comma_and_point_are_both_decimal(string typed) =>
        Assert.Equal(1.5, Single(Entering.Row((EntryColumn.LigamentArea, typed))).LigamentArea!.Value.Value);

    [Fact]
    public void Nought_blank_and_d_are_three_different_answers()
    {
        (EntryColumn, string) ligament = (EntryColumn.LigamentArea, "1.5");

        Assert.Equal(LesionArea.None, Single(Entering.Row(ligament, (EntryColumn.LesionArea, "0"))).LesionArea);
        Assert.Equal(LesionArea.Unknown, Single(Entering.Row(ligament, (EntryColumn.LesionArea, ""))).LesionArea);
        Assert.Equal(LesionArea.Diffuse, Single(Entering.Row(ligament, (EntryColumn.LesionArea, "D"))).LesionArea);
    }

    [Fact]
    public void The_other_limb_is_read_beside_its_level_and_alone_it_is_not_silent()
    {
        Reading reading = Single(Entering.Row((EntryColumn.LigamentArea, "1,5"), (EntryColumn.OtherLimbLigamentArea, "1,2")));
        Assert.Equal(1.2, reading.OtherLimbLigamentArea!.Value.Value);
        Assert.Null(reading.OtherLimbThickness);

        CellProblem alone = Problem(Entering.Row((EntryColumn.OtherLimbThickness, "0.9")));

        Assert.Equal("note-alone", alone.Problem.Code);
    }

    [Theory]
    [InlineData(HeaderField.Origin, "8 or 9", "not-a-number")]
    [InlineData(HeaderField.Division, "61", "level-out-of-range")]
    [InlineData(HeaderField.MedialInsertion, "1.234,5", "ambiguous-number")]
    public void A_fixed_point_that_cannot_be_is_said_at_its_field_and_stays_as_typed(HeaderField field, string typed, string code)
    {
        Worksheet sheet = Entering.Row((EntryColumn.LigamentArea, "1.5")).With(field, typed);

        HeaderProblem problem = Assert.Single(WorksheetReader.Read(sheet, Entering.Terms).HeaderProblems);

        Assert.Equal((field, code), (problem.Field, problem.Problem.Code));
        Assert.Equal(typed, sheet[field]);
    }

    [Fact]
    public void A_fixed_point_above_one_that_lies_higher_is_said_at_the_lower_one()
    {
        Worksheet sheet = Entering.Row((EntryColumn.LigamentArea, "1.5")).With(HeaderField.Origin, "24").With(HeaderField.Division, "20,5");

        HeaderProblem problem = Assert.Single(WorksheetReader.Read(sheet, Entering.Terms).HeaderProblems);

        Assert.Equal((HeaderField.Division, "fixed-point-order"), (problem.Field, problem.Problem.Code));
    }

    [Fact]
    public void A_draft_of_an_earlier_version_keeps_every_text()
    {
        Worksheet sheet = Entering.Row((EntryColumn.LigamentArea, "1,5"), (EntryColumn.Note, "clear edge"));
        EntryRow row = sheet.Grid.Rows[0];
        Worksheet earlier = sheet.With(new EntryGrid([row with { Cells = [.. row.Cells.Take((int)EntryColumn.OtherLimbLigamentArea)] }]));

        Worksheet read = Worksheet.FromJson(earlier.ToJson())!;

        Assert.Equal(sheet, read);
        Assert.Equal(("1,5", "clear edge"), (read.Grid.Rows[0][EntryColumn.LigamentArea], read.Grid.Rows[0][EntryColumn.Note]));
    }

    [Fact]
    public void The_columns_of_the_other_limb_show_where_it_is_read_or_something_stands_in_them()
    {
        Worksheet sheet = Entering.Row((EntryColumn.LigamentArea, "1.5"));
        bool Shows(Worksheet shown) => EntryColumns.Shown(shown).Contains(EntryColumn.OtherLimbThickness);

        Assert.False(Shows(sheet));
        Assert.True(Shows(sheet.With(HeaderField.OtherLimb, "yes")));
        Assert.True(Shows(Entering.Row((EntryColumn.OtherLimbThickness, "0.9"))));
    }

    [Fact]
    public void Absent_stays_absent()
    {
        Reading reading = Single(Entering.Row((EntryColumn.Thickness, "0.8")));

        Assert.Null(reading.LigamentArea);
        Assert.Null(reading.Width);
        Assert.Null(reading.Echogenicity);
        Assert.Null(reading.Lesion);
    }

    [Theory]
    [InlineData(EntryColumn.LigamentArea, "1.5 cm")]
    [InlineData(EntryColumn.LigamentArea, "1.234,5")]
    [InlineData(EntryColumn.Level, "24ish")]
    [InlineData(EntryColumn.Echogenicity, "two")]
    [InlineData(EntryColumn.Role, "n")]
    [InlineData(EntryColumn.Part, "elbow")]
    public void What_cannot_be_read_is_said_at_its_cell_once(EntryColumn column, string typed)
    {
        CellProblem problem = Problem(Entering.Row((EntryColumn.Width, "1.2"), (column, typed)));

        Assert.Equal(column, problem.Column);
        Assert.Equal(typed, problem.Problem.Arguments[0]);
    }

    [Theory]
    [InlineData(EntryColumn.LigamentArea, "21")]
    [InlineData(EntryColumn.LigamentArea, "0")]
    [InlineData(EntryColumn.Thickness, "-1")]
    [InlineData(EntryColumn.Thickness, "5.1")]
    [InlineData(EntryColumn.Level, "61")]
    [InlineData(EntryColumn.Level, "-1")]
    [InlineData(EntryColumn.Echogenicity, "4")]
    [InlineData(EntryColumn.FibreAlignment, "1.5")]
    public void Absurd_sizes_and_grades_are_said_at_their_cell(EntryColumn column, string typed) =>
        Assert.Equal(column, Problem(Entering.Row((EntryColumn.Width, "1.2"), (column, typed))).Column);

    [Fact]
    public void A_lesion_larger_than_the_ligament_is_said_at_the_lesion() =>
        Assert.Equal(
            EntryColumn.LesionArea,
            Problem(Entering.Row((EntryColumn.LigamentArea, "1.2"), (EntryColumn.LesionArea, "1.3"))).Column
        );

    [Fact]
    public void All_problems_of_all_rows_come_at_once()
    {
        Worksheet sheet = Entering.Row((EntryColumn.LigamentArea, "x"), (EntryColumn.Thickness, "9"));
        EntryGrid grid = sheet.Grid.InsertBelow("r1", "r2").Type("r2", EntryColumn.LigamentArea, "1");

        WorksheetReading read = WorksheetReader.Read(sheet.With(grid), Entering.Terms);

        Assert.Equal(
            [("r1", EntryColumn.LigamentArea), ("r1", EntryColumn.Thickness), ("r2", EntryColumn.Level)],
            read.CellProblems.Select(problem => (problem.RowKey, problem.Column))
        );
    }

    [Fact]
    public void The_same_place_twice_is_an_error_and_a_second_tracing_is_not()
    {
        Worksheet sheet = Entering.Row((EntryColumn.LigamentArea, "1.5"));
        EntryGrid repeated = sheet.Grid.Repeat("r1", "r2").Type("r2", EntryColumn.LigamentArea, "1.6");
        Assert.True(WorksheetReader.Read(sheet.With(repeated), Entering.Terms).IsClean);

        EntryGrid twice = sheet
            .Grid.InsertBelow("r1", "r2")
            .Type("r2", EntryColumn.Level, "24,0")
            .Type("r2", EntryColumn.LigamentArea, "1.6");
        CellProblem problem = Assert.Single(WorksheetReader.Read(sheet.With(twice), Entering.Terms).CellProblems);
        Assert.Equal(("r2", EntryColumn.Level), (problem.RowKey, problem.Column));
    }

    [Fact]
    public void Rows_not_read_and_rows_laid_out_only_are_no_readings()
    {
        EntryGrid grid = Entering
            .LaidOut(20, 22, 24)
            .Type("r1", EntryColumn.LigamentArea, "1.2")
            .Type("r2", EntryColumn.LigamentArea, "1.3")
            .Strike("r2");

        WorksheetReading read = WorksheetReader.Read(new Worksheet().With(HeaderField.Date, "today").With(grid), Entering.Terms);

        Assert.True(read.IsClean);
        Assert.Equal(20, Assert.Single(read.Examination.Readings).Level.Position.Value);
    }

    [Fact]
    public void The_measurer_and_the_scale_above_the_grid_go_to_every_reading()
    {
        Reading reading = Single(
            Entering
                .Row((EntryColumn.Echogenicity, "4"))
                .With(HeaderField.Measurer, "H. Brandt")
                .With(HeaderField.EchogenicityScale, GradeScales.Echogenicity0To4.Id)
        );

        Assert.Equal("H. Brandt", reading.Measurer);
        Assert.Equal(new Grade(GradeScales.Echogenicity0To4, 4), reading.Echogenicity);
    }

    [Fact]
    public void A_normal_level_with_a_lesion_is_worth_a_second_look_and_is_kept()
    {
        WorksheetReading read = WorksheetReader.Read(
            Entering.Row((EntryColumn.Role, "above"), (EntryColumn.LigamentArea, "1.5"), (EntryColumn.LesionArea, "0.2")),
            Entering.Terms
        );

        Assert.True(read.IsClean);
        Assert.Equal(EntryColumn.Role, Assert.Single(read.Cautions).Column);
    }

    [Theory]
    [InlineData("")]
    [InlineData("31.6.2026")]
    [InlineData("2026-09-09")]
    [InlineData("1.1.2019")]
    public void A_date_that_is_missing_impossible_to_come_or_before_birth_is_said_at_the_date(string typed)
    {
        WorksheetReading read = WorksheetReader.Read(
            Entering.Row((EntryColumn.LigamentArea, "1.5")).With(HeaderField.Date, typed),
            Entering.Terms with
            {
                BirthDate = new DateOnly(2020, 5, 1),
            }
        );

        Assert.Equal(HeaderField.Date, Assert.Single(read.HeaderProblems).Field);
        Assert.Null(read.Date);
        Assert.Equal(Entering.Today, read.Content.Date);
    }

    [Fact]
    public void Everything_typed_is_kept_and_a_level_not_read_keeps_its_place_only()
    {
        EntryGrid grid = Entering
            .LaidOut(20, 22, 24)
            .Type("r1", EntryColumn.LigamentArea, "wide")
            .Type("r1", EntryColumn.Thickness, "0,8")
            .Type("r2", EntryColumn.LigamentArea, "1.3")
            .Strike("r2");

        WorksheetReading read = WorksheetReader.Read(new Worksheet().With(HeaderField.Date, "today").With(grid), Entering.Terms);

        Assert.Equal([20, 22, 24], read.Content.Readings.Select(row => row.Values.LevelCm));
        Assert.Equal(0.8, read.Content.Readings[0].Values.ThicknessCm);
        Assert.False(read.Content.Readings[1].Values.HasMeasurement);
        Assert.Equal(EntryColumn.LigamentArea, Assert.Single(read.CellProblems).Column);
    }

    [Fact]
    public void A_share_from_a_file_stands_only_beside_the_areas_it_came_with()
    {
        Guid id = Guid.CreateVersion7();
        ReadingDraft values = new()
        {
            Part = Rechecks.Anatomy.Part.Body,
            LevelCm = 24,
            LigamentAreaCm2 = 1.5,
            LesionPercent = 20,
        };
        ExaminationContent content = new() { Date = Entering.Today, Readings = [new DraftReading(id, values)] };
        WorksheetTerms terms = Entering.Terms with { Kept = content };
        Worksheet same = Worksheet.Of(content, false, GradeScales.Echogenicity0To3, Entering.Keys());

        Assert.Equal(20, WorksheetReader.Read(same, terms).Examination.Readings[0].LesionPercent!.Value.Value);

        Worksheet measured = same.With(same.Grid.Type(id.ToString(), EntryColumn.LesionArea, "0.1"));
        Assert.Null(WorksheetReader.Read(measured, terms).Examination.Readings[0].LesionPercent);
    }
}
