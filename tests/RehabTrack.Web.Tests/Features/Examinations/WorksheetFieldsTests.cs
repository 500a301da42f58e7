using RehabTrack.Web.Features.Examinations.Worksheets;

namespace RehabTrack.Web.Tests.Features.Examinations;

public sealed class WorksheetFieldsTests
{
    private readonly Worksheet _sheet = new Worksheet().With(HeaderField.Date, "2026-09-08").With(Entering.LaidOut(20, 22));

    [Fact]
    public void Texts_go_out_by_field_and_come_back_into_their_places()
    {
        Worksheet changed = WorksheetFields.Apply(
            _sheet,
            new Dictionary<string, string>
            {
                ["Examiner"] = "Ada",
                ["r2|LigamentArea"] = "1,3",
                ["r1|Role"] = "w",
            }
        );

        Assert.Equal("Ada", changed[HeaderField.Examiner]);
        Assert.Equal("1,3", WorksheetFields.TextsOf(changed)["r2|LigamentArea"]);
        Assert.Equal("worst", WorksheetFields.TextsOf(changed)["r1|Role"]);
        Assert.Equal(changed, WorksheetFields.Apply(new Worksheet(), WorksheetFields.TextsOf(changed)) with { Grid = changed.Grid });
    }

    [Fact]
    public void The_field_that_is_still_typed_into_is_left_as_typed() =>
        Assert.Equal(
            "m",
            WorksheetFields.Apply(_sheet, new Dictionary<string, string> { ["r1|Part"] = "m" }, "r1|Part").Grid.Rows[0][EntryColumn.Part]
        );

    [Fact]
    public void A_row_that_is_not_there_any_more_is_added_and_its_texts_kept()
    {
        EntryGrid grid = WorksheetFields
            .Apply(_sheet, new Dictionary<string, string> { ["lost|Level"] = "24", ["lost|LigamentArea"] = "1.4" })
            .Grid;

        Assert.Equal(("24", "1.4"), (grid.Find("lost")![EntryColumn.Level], grid.Find("lost")![EntryColumn.LigamentArea]));
    }

    [Theory]
    [InlineData("Nonsense")]
    [InlineData("99")]
    [InlineData("r1|Nonsense")]
    [InlineData("r1|99")]
    [InlineData("a|b|c")]
    public void A_name_that_is_no_field_changes_nothing(string name) =>
        Assert.Equal(_sheet, WorksheetFields.Apply(_sheet, new Dictionary<string, string> { [name] = "x" }));
}
