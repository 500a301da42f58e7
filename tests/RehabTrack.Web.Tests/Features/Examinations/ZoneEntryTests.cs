using Bunit;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Web.Features.Examinations;
using RehabTrack.Web.Features.Examinations.Worksheets;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Examinations;

/// <summary>An examination whose levels are zones: chosen above the grid, typed in the level's column.</summary>
public sealed class ZoneEntryTests : IAsyncDisposable
{
    private static readonly WorksheetTerms Terms = Entering.Terms with { Limb = Limb.LeftHind };
    private readonly BunitContext _page = new();

    public ZoneEntryTests() => _page.JSInterop.Mode = JSRuntimeMode.Loose;

    public ValueTask DisposeAsync() => _page.DisposeAsync();

    private static Worksheet Zoned(string zone, ZoneScheme scheme = ZoneScheme.HindNine) =>
        Entering.Row((EntryColumn.Level, zone), (EntryColumn.LigamentArea, "1.5")).With(HeaderField.Zones, scheme.ToString());

    private IRenderedComponent<EntryForm> Render(Worksheet sheet) =>
        _page.Render<EntryForm>(parameters =>
            parameters
                .Add(one => one.Sheet, sheet)
                .Add(one => one.Reading, WorksheetReader.Read(sheet, Terms))
                .Add(one => one.Keep, () => Task.FromResult(EntryStates.Sent))
                .Add(one => one.Limb, Limb.LeftHind)
                .Add(one => one.StorageKey, "draft")
        );

    [Fact]
    public void A_zone_is_read_and_kept_without_a_level_in_cm()
    {
        WorksheetReading read = WorksheetReader.Read(Zoned("2b").With(HeaderField.Landmark, nameof(Landmark.PointOfHock)), Terms);

        Assert.True(read.IsClean);
        Assert.Equal(ZoneScheme.HindNine, read.Content.Zones);
        Assert.Equal(ZoneScheme.HindNine, read.Examination.Zones);
        Assert.Null(read.Content.Landmark);
        ReadingDraft kept = Assert.Single(read.Content.Readings).Values;
        Assert.Equal((null, "2b", ZoneScheme.HindNine), (kept.LevelCm, kept.Zone, kept.ZoneScheme));
        Assert.Equal("2B", Assert.Single(read.Examination.Readings).Level.Zone?.Name);
    }

    [Theory]
    [InlineData("24", ZoneScheme.HindNine, "zone-unknown")]
    [InlineData("4A", ZoneScheme.HindSeven, "zone-unknown")]
    [InlineData("", ZoneScheme.HindNine, "zone-missing")]
    public void What_is_no_zone_is_said_at_the_levels_cell(string typed, ZoneScheme scheme, string code)
    {
        WorksheetReading read = WorksheetReader.Read(Zoned(typed, scheme), Terms);

        CellProblem problem = Assert.Single(read.CellProblems);
        Assert.Equal((EntryColumn.Level, code), (problem.Column, problem.Problem.Code));
        Assert.Empty(read.Examination.Readings);
    }

    [Fact]
    public void Another_limbs_scheme_and_fixed_points_are_said_at_their_fields()
    {
        WorksheetReading read = WorksheetReader.Read(Zoned("2A", ZoneScheme.ForeSeven).With(HeaderField.Division, "24"), Terms);

        Assert.Equal(
            [(HeaderField.Zones, "zone-scheme-other-limb"), (HeaderField.Division, "fixed-point-by-zones")],
            read.HeaderProblems.Select(problem => (problem.Field, problem.Problem.Code))
        );
    }

    [Fact]
    public void The_same_zone_twice_is_the_same_place_however_it_is_written()
    {
        Worksheet sheet = Zoned("2B");
        EntryGrid twice = sheet
            .Grid.InsertBelow("r1", "r2")
            .Type("r2", EntryColumn.Level, "2b")
            .Type("r2", EntryColumn.LigamentArea, "1.6");
        CellProblem problem = Assert.Single(WorksheetReader.Read(sheet.With(twice), Terms).CellProblems);
        Assert.Equal(("r2", EntryColumn.Level), (problem.RowKey, problem.Column));

        EntryGrid repeated = sheet.Grid.Repeat("r1", "r2").Type("r2", EntryColumn.LigamentArea, "1.6");
        Assert.Equal("2", repeated.Find("r2")?.Repeat);
        Assert.True(WorksheetReader.Read(sheet.With(repeated), Terms).IsClean);
    }

    [Fact]
    public void Rows_are_sorted_down_the_zones()
    {
        EntryGrid grid = EntryGrid.Empty;
        foreach (string zone in (string[])["4C", "2a", "3B", "1B"])
        {
            grid = grid.InsertBelow(null, zone).Type(zone, EntryColumn.Part, "body").Type(zone, EntryColumn.Level, zone);
        }

        Assert.Equal(["1B", "2a", "3B", "4C"], grid.Sorted().Rows.Select(row => row[EntryColumn.Level]));
    }

    [Fact]
    public void A_worksheet_of_zones_comes_back_as_it_was_kept()
    {
        WorksheetReading read = WorksheetReader.Read(Zoned("3A"), Terms);
        Worksheet again = Worksheet.Of(read.Content, true, WorksheetReader.ScaleOf(Zoned("3A")), Entering.Keys());

        Assert.Equal(nameof(ZoneScheme.HindNine), again[HeaderField.Zones]);
        Assert.Equal("3A", again.Grid.Rows[0][EntryColumn.Level]);
    }

    [Fact]
    public void The_page_offers_the_schemes_of_the_limb_and_takes_letters_and_commands_in_the_levels_cell()
    {
        IRenderedComponent<EntryForm> form = Render(Zoned("2B"));

        Assert.Equal(
            [ExaminationPage.ZonesNone, Names.Of(ZoneScheme.HindSeven), Names.Of(ZoneScheme.HindNine)],
            form.FindAll("#Zones option").Select(option => option.TextContent)
        );
        AngleSharp.Dom.IElement cell = form.FindAll("input").Single(input => input.GetAttribute("data-field") == "r1|Level");
        Assert.Equal("text", cell.GetAttribute("inputmode"));
        Assert.True(cell.HasAttribute("data-commands"));
        Assert.Equal(ExaminationPage.UnitZone, form.Find("th.col-level .unit").TextContent);
        Assert.DoesNotContain("2B cm", form.Markup, StringComparison.Ordinal);

        Assert.Equal("decimal", Render(Entering.Row()).Find("td.col-level input").GetAttribute("inputmode"));
    }
}
