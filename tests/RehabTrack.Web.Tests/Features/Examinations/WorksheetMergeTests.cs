using RehabTrack.Web.Features.Examinations.Worksheets;

namespace RehabTrack.Web.Tests.Features.Examinations;

public sealed class WorksheetMergeTests
{
    private readonly Worksheet _before = new Worksheet().With(HeaderField.Date, "2026-09-08").With(Entering.LaidOut(20, 22));

    private Worksheet Typed(string row, EntryColumn column, string text) => _before.With(_before.Grid.Type(row, column, text));

    [Fact]
    public void What_only_one_changed_is_taken_from_each()
    {
        Worksheet mine = Typed("r1", EntryColumn.LigamentArea, "1.2");
        Worksheet theirs = Typed("r2", EntryColumn.LigamentArea, "1.3").With(HeaderField.Examiner, "Ada");

        WorksheetMerge merge = WorksheetMerge.Of(_before, mine, theirs);

        Assert.Empty(merge.Differences);
        Assert.Equal("1.2", merge.Merged.Grid.Rows[0][EntryColumn.LigamentArea]);
        Assert.Equal("1.3", merge.Merged.Grid.Rows[1][EntryColumn.LigamentArea]);
        Assert.Equal("Ada", merge.Merged[HeaderField.Examiner]);
    }

    [Fact]
    public void Where_both_changed_one_field_both_values_are_shown_and_one_is_chosen()
    {
        WorksheetMerge merge = WorksheetMerge.Of(
            _before,
            Typed("r1", EntryColumn.LigamentArea, "1.2").With(HeaderField.Date, "7.9."),
            Typed("r1", EntryColumn.LigamentArea, "1.3").With(HeaderField.Date, "6.9.")
        );

        Assert.Equal([("7.9.", "6.9."), ("1.2", "1.3")], merge.Differences.Select(one => (one.Mine, one.Theirs)));
        Assert.Equal("1.2", merge.Merged.Grid.Rows[0][EntryColumn.LigamentArea]);

        Worksheet chosen = merge.TakeTheirs(merge.Differences[1]).Merged;
        Assert.Equal("1.3", chosen.Grid.Rows[0][EntryColumn.LigamentArea]);
        Assert.Equal("7.9.", chosen[HeaderField.Date]);
        Assert.Equal("6.9.", merge.TakeTheirs(merge.Differences[0]).Merged[HeaderField.Date]);
    }

    [Fact]
    public void Rows_added_by_either_stay_and_rows_marked_not_read_by_either_are_marked()
    {
        Worksheet mine = _before.With(_before.Grid.InsertBelow("r2", "mine").Strike("r1"));
        Worksheet theirs = _before.With(_before.Grid.InsertBelow("r1", "theirs").Strike("r2"));

        EntryGrid merged = WorksheetMerge.Of(_before, mine, theirs).Merged.Grid;

        Assert.Equal(["mine", "r1", "r2", "theirs"], merged.Rows.Select(row => row.Key).Order(StringComparer.Ordinal));
        Assert.Equal(["r1", "r2"], merged.Rows.Where(row => row.NotRead).Select(row => row.Key));
    }

    [Fact]
    public void A_row_taken_away_by_one_goes_unless_the_other_wrote_into_it()
    {
        Worksheet start = _before.With(_before.Grid.InsertBelow("r2", "new"));
        Worksheet without = start.With(start.Grid.Strike("new"));
        Worksheet written = start.With(start.Grid.Type("new", EntryColumn.Level, "24"));

        Assert.Null(WorksheetMerge.Of(start, start, without).Merged.Grid.Find("new"));
        Assert.NotNull(WorksheetMerge.Of(start, written, without).Merged.Grid.Find("new"));
        Assert.NotNull(WorksheetMerge.Of(start, without, written).Merged.Grid.Find("new"));
    }

    [Fact]
    public void A_worksheet_survives_its_way_through_the_draft_as_typed()
    {
        Worksheet sheet = Typed("r1", EntryColumn.LigamentArea, "1,2 about").With(HeaderField.Transducer, "linear \"12\" MHz");
        sheet = sheet.With(sheet.Grid.Strike("r2").Repeat("r1", "again"));

        Assert.Equal(sheet, Worksheet.FromJson(sheet.ToJson()));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("[]")]
    [InlineData("{\"grid\":{\"rows\":[{\"key\":\"a\",\"cells\":[\"\"]}]}}")]
    public void A_text_that_is_no_worksheet_is_none(string? json) => Assert.Null(Worksheet.FromJson(json));
}
