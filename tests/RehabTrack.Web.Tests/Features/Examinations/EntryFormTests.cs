using AngleSharp.Dom;
using Bunit;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Web.Features.Examinations;
using RehabTrack.Web.Features.Examinations.Worksheets;
using RehabTrack.Web.Tests.Features.Cases;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Examinations;

public sealed class EntryFormTests : IAsyncDisposable
{
    private readonly BunitContext _page = new();
    private Worksheet _sheet = new Worksheet().With(HeaderField.Date, "2026-09-08").With(Entering.LaidOut(20, 22, 24));
    private string _answer = EntryStates.Sent;
    private int _kept;
    private int _goneOn;

    public EntryFormTests() => _page.JSInterop.Mode = JSRuntimeMode.Loose;

    public ValueTask DisposeAsync() => _page.DisposeAsync();

    private IRenderedComponent<EntryForm> Render(Examination? last = null, bool readOnly = false)
    {
        IRenderedComponent<EntryForm> form = null!;
        form = _page.Render<EntryForm>(Set);
        return form;

        void Set(ComponentParameterCollectionBuilder<EntryForm> parameters) =>
            parameters
                .Add(one => one.Sheet, _sheet)
                .Add(one => one.Reading, WorksheetReader.Read(_sheet, Entering.Terms))
                .Add(one => one.SheetChanged, Take)
                .Add(one => one.Keep, KeepAsync)
                .Add(one => one.GoOn, () => _goneOn++)
                .Add(one => one.Last, last)
                .Add(one => one.ReadOnly, readOnly)
                .Add(one => one.StorageKey, "draft");

        void Take(Worksheet sheet)
        {
            _sheet = sheet;
            form.Render(Set);
        }
    }

    private Task<string> KeepAsync()
    {
        _kept++;
        return Task.FromResult(_answer);
    }

    private static async Task<EntryAnswer> TypeAsync(IRenderedComponent<EntryForm> form, string field, string text, string? half = null) =>
        await form.InvokeAsync(() => form.Instance.Typed(new Dictionary<string, string> { [field] = text }, half));

    private static IElement Cell(IRenderedComponent<EntryForm> form, string field) =>
        form.FindAll("input").Single(input => input.GetAttribute("data-field") == field);

    [Fact]
    public void Every_cell_is_named_by_column_row_and_level()
    {
        IRenderedComponent<EntryForm> form = Render();

        Assert.Equal("Ligament area, row 2, 22 cm", Cell(form, "r2|LigamentArea").GetAttribute("aria-label"));
        Assert.Equal("Level, row 2", Cell(form, "r2|Level").GetAttribute("aria-label"));
        Assert.Equal("decimal", Cell(form, "r2|LesionArea").GetAttribute("inputmode"));
        Assert.Equal("numeric", Cell(form, "r2|Echogenicity").GetAttribute("inputmode"));
        Assert.Equal(
            3 * (EntryColumns.All.Count - EntryColumns.OfOtherLimb.Count),
            form.FindAll("table input").Select(one => one.GetAttribute("aria-label")).Distinct().Count()
        );
    }

    [Fact]
    public void The_keys_stand_on_the_page()
    {
        string help = string.Concat(Render().FindAll(".entry-keys").Select(line => line.TextContent));

        Assert.All(["+", "-", "*", "/", "Enter", "Tab", "Ctrl"], key => Assert.Contains(key, help, StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_is_typed_is_kept_and_answered_with_all_that_the_server_holds()
    {
        IRenderedComponent<EntryForm> form = Render();

        EntryAnswer answer = await TypeAsync(form, "r1|LigamentArea", "1,5");

        Assert.Equal(EntryStates.Sent, answer.State);
        Assert.Equal("1,5", answer.Texts["r1|LigamentArea"]);
        Assert.Equal(1, _kept);
        Assert.Contains("1 of 3", form.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_answer_of_the_server_is_never_drawn_into_a_cell_over_what_is_being_typed()
    {
        IRenderedComponent<EntryForm> form = Render();
        string before = Cell(form, "r1|Note").GetAttribute("value") ?? "";

        await TypeAsync(form, "r1|Note", "k", "r1|Note");

        Assert.Equal(before, Cell(form, "r1|Note").GetAttribute("value") ?? "");
    }

    [Fact]
    public async Task A_mistake_is_said_below_its_row_and_in_the_summary_and_kept_as_typed()
    {
        IRenderedComponent<EntryForm> form = Render();

        await TypeAsync(form, "r1|LigamentArea", "1.5");
        await TypeAsync(form, "r1|LesionArea", "1.6");

        IElement cell = Cell(form, "r1|LesionArea");
        Assert.Equal("true", cell.GetAttribute("aria-invalid"));
        Assert.Contains(
            "larger than the ligament",
            form.Find($"[id='{cell.GetAttribute("aria-describedby")}']").TextContent,
            StringComparison.Ordinal
        );
        Assert.Contains(ExaminationPage.SummaryOne, form.Find(".notice.red").TextContent, StringComparison.Ordinal);
        Assert.Equal("1.6", _sheet.Grid.Rows[0][EntryColumn.LesionArea]);
    }

    [Fact]
    public async Task The_cell_that_is_being_typed_into_is_not_corrected_yet()
    {
        IRenderedComponent<EntryForm> form = Render();

        await TypeAsync(form, "r1|LigamentArea", "1,", "r1|LigamentArea");
        await TypeAsync(form, "r1|Thickness", "0.8.", "r1|Thickness");
        Assert.Null(Cell(form, "r1|Thickness").GetAttribute("aria-invalid"));

        await TypeAsync(form, "r1|Thickness", "0.8.");
        Assert.Equal("true", Cell(form, "r1|Thickness").GetAttribute("aria-invalid"));
    }

    [Fact]
    public async Task The_keys_of_the_grid_add_strike_repeat_and_sort_rows_and_keep_them()
    {
        IRenderedComponent<EntryForm> form = Render();

        await form.InvokeAsync(() => form.Instance.Command(EntryForm.Insert, "r1", "LigamentArea"));
        Assert.Equal(4, form.FindAll("tr.entry-row").Count);
        await form.InvokeAsync(() => form.Instance.Command(EntryForm.Strike, "r2", "LigamentArea"));
        Assert.Single(form.FindAll("tr.is-not-read"));
        await form.InvokeAsync(() => form.Instance.Command(EntryForm.Repeat, "r3", "LigamentArea"));
        Assert.Equal(5, form.FindAll("tr.entry-row").Count);
        Assert.Equal("2", _sheet.Grid.Rows[^1].Repeat);
        string added = _sheet.Grid.Rows[1].Key;
        await TypeAsync(form, $"{added}|Level", "19");
        await form.InvokeAsync(() => form.Instance.Command(EntryForm.Sort, "r1", "Level"));

        Assert.Equal(["19", "20", "22", "24", "24"], _sheet.Grid.Rows.Select(row => row[EntryColumn.Level]));
        Assert.Equal(5, _kept);
    }

    [Fact]
    public async Task The_buttons_do_what_the_keys_do()
    {
        IRenderedComponent<EntryForm> form = Render();

        await form.Find($"button[aria-label='{ExaminationPage.ActionStrike}, row 1']").ClickAsync(new());

        Assert.True(_sheet.Grid.Rows[0].NotRead);
        Assert.NotNull(form.Find($"button[aria-label='{ExaminationPage.ActionUnstrike}, row 1']"));
    }

    [Fact]
    public async Task Ctrl_Enter_goes_on_to_signing()
    {
        IRenderedComponent<EntryForm> form = Render();

        await form.InvokeAsync(() => form.Instance.Command(EntryForm.SaveAndGoOn, "r1", "Level"));

        Assert.Equal(1, _goneOn);
    }

    [Fact]
    public void The_date_is_echoed_with_the_days_since_last_time() =>
        Assert.Equal(
            "Tuesday 8 September 2026, 59 days after the last examination",
            Render(Invented.Examination(4)).Find("output").TextContent
        );

    [Fact]
    public async Task What_the_server_did_not_take_is_said_so_to_the_browser()
    {
        _answer = EntryStates.NotSent;

        Assert.Equal(EntryStates.NotSent, (await TypeAsync(Render(), "r1|LigamentArea", "1.5")).State);
    }

    [Fact]
    public async Task Nothing_changes_where_nothing_may_be_typed()
    {
        IRenderedComponent<EntryForm> form = Render(readOnly: true);

        await TypeAsync(form, "r1|LigamentArea", "1.5");
        await form.InvokeAsync(() => form.Instance.Command(EntryForm.Insert, "r1", "Level"));

        Assert.Equal(0, _kept);
        Assert.Equal(3, _sheet.Grid.Rows.Count);
    }
}
