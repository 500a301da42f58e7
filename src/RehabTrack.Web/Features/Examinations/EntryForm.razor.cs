using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Web.Components;
using RehabTrack.Web.Features.Examinations.Worksheets;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Examinations;

/// <summary>The entry of an examination. It owns no state but the field being typed into: the worksheet is its parent's.</summary>
public sealed partial class EntryForm
{
    /// <summary>Below the row: a new level.</summary>
    public const string Insert = "insert";

    /// <summary>The level was not read.</summary>
    public const string Strike = "strike";

    /// <summary>A second tracing of the place.</summary>
    public const string Repeat = "repeat";

    /// <summary>Rows down the limb.</summary>
    public const string Sort = "sort";

    /// <summary>Save, and on to signing.</summary>
    public const string SaveAndGoOn = "save";

    private readonly DotNetObjectReference<EntryForm> _self;
    private ElementReference _root;
    private AttachedScript _script = default!;
    private string? _halfTyped;

    // What stood in the fields when they were first drawn; see the rows.
    private Worksheet _first = new();
    private string? _focus;
    private int _restored;

    public EntryForm()
    {
        _self = DotNetObjectReference.Create(this);
    }

    /// <summary>What was typed.</summary>
    [Parameter, EditorRequired]
    public Worksheet Sheet { get; set; } = default!;

    /// <summary>What it says.</summary>
    [Parameter, EditorRequired]
    public WorksheetReading Reading { get; set; } = default!;

    /// <summary>Called with every change.</summary>
    [Parameter]
    public EventCallback<Worksheet> SheetChanged { get; set; }

    /// <summary>Keeps the worksheet on the server; yields one of <see cref="EntryStates"/>.</summary>
    [Parameter, EditorRequired]
    public Func<Task<string>> Keep { get; set; } = default!;

    /// <summary>Called when the person wants to check and sign.</summary>
    [Parameter]
    public EventCallback GoOn { get; set; }

    /// <summary>The examination the levels come from; null when there is none.</summary>
    [Parameter]
    public Examination? Last { get; set; }

    /// <summary>The limb: it tells where a tape can start.</summary>
    [Parameter]
    public Limb Limb { get; set; }

    /// <summary>Whether a signed examination is being amended.</summary>
    [Parameter]
    public bool Amending { get; set; }

    [Parameter]
    public bool ReadOnly { get; set; }

    /// <summary>Names offered for examiner and measurer.</summary>
    [Parameter]
    public IReadOnlyList<string> People { get; set; } = [];

    /// <summary>Transducers used before.</summary>
    [Parameter]
    public IReadOnlyList<string> Transducers { get; set; } = [];

    /// <summary>Under which name the browser keeps what the server does not have yet.</summary>
    [Parameter, EditorRequired]
    public string StorageKey { get; set; } = "";

    /// <summary>More buttons below the grid.</summary>
    [Parameter]
    public RenderFragment? Foot { get; set; }

    private IReadOnlyList<EntryColumn> Columns => EntryColumns.Shown(Sheet);

    private bool ByZones => WorksheetReader.ZonesOf(Sheet) is not null;

    // The scheme that a draft has already stays to be seen, even where it does not fit the limb.
    private IEnumerable<ZoneScheme> Schemes =>
        Enum.GetValues<ZoneScheme>().Where(scheme => ZoneSchemes.Fits(scheme, Limb) || scheme == WorksheetReader.ZonesOf(_first));

    private string? LastKey => Sheet.Grid.Rows is [.., var last] ? last.Key : null;

    private int ProblemCount => Reading.HeaderProblems.Count + Reading.CellProblems.Count(IsShown);

    private string? DateEcho =>
        Reading.Date is not { } date ? null
        : Last is not { } last || last.Date == date ? LongDate(date)
        : Text(
            date > last.Date ? ExaminationPage.DateEchoSince : ExaminationPage.DateEchoBefore,
            LongDate(date),
            Math.Abs(date.DayNumber - last.Date.DayNumber)
        );

    private string Progress
    {
        get
        {
            EntryGrid grid = Sheet.Grid;
            int expected = grid.Rows.Count(row => row.Expected);
            int read = grid.Rows.Count(row => row.Expected && row.IsRead);
            int notRead = grid.Rows.Count(row => row.Expected && row.NotRead);
            return (expected, notRead) switch
            {
                (0, _) => grid.Rows.Count(row => row.IsRead) is 1
                    ? ExaminationPage.ProgressNewOne
                    : Text(ExaminationPage.ProgressNew, grid.Rows.Count(row => row.IsRead)),
                (_, 0) => Text(read == expected ? ExaminationPage.ProgressAllOf : ExaminationPage.Progress, read, expected),
                _ => Text(ExaminationPage.ProgressNotRead, read, expected, notRead),
            };
        }
    }

    /// <summary>Texts arrived from the browser.</summary>
    /// <param name="texts">By field.</param>
    /// <param name="halfTyped">The field that is still being typed into.</param>
    [JSInvokable]
    public async Task<EntryAnswer> Typed(Dictionary<string, string> texts, string? halfTyped)
    {
        if (ReadOnly)
        {
            return new EntryAnswer(EntryStates.Kept, WorksheetFields.TextsOf(Sheet));
        }

        _halfTyped = halfTyped;
        await ChangeAsync(WorksheetFields.Apply(Sheet, texts, halfTyped));
        string state = await Keep();
        StateHasChanged();
        return new EntryAnswer(state, WorksheetFields.TextsOf(Sheet));
    }

    /// <summary>A key of the grid was pressed.</summary>
    /// <param name="name">The command.</param>
    /// <param name="rowKey">The row it was pressed in.</param>
    /// <param name="column">The column it was pressed in.</param>
    [JSInvokable]
    public async Task Command(string name, string rowKey, string column)
    {
        await CommandAsync(name, rowKey);
        if (_focus is null && Enum.TryParse(column, out EntryColumn stay) && Sheet.Grid.Find(rowKey) is not null && name != SaveAndGoOn)
        {
            _focus = WorksheetFields.Of(rowKey, stay);
        }

        StateHasChanged();
    }

    /// <summary>Puts the focus into a field.</summary>
    public async Task FocusAsync(string field)
    {
        await _script.AskAsync("focus", field);
    }

    /// <summary>Puts the focus into an element of the page outside the form, by its id.</summary>
    public async Task FocusElementAsync(string id)
    {
        await _script.AskAsync("focusElement", id);
    }

    /// <summary>The worksheet was changed by the parent: tells the browser what the server holds.</summary>
    /// <param name="sheet">The worksheet as it stands now: this form may not have been drawn with it yet.</param>
    /// <param name="state">One of <see cref="EntryStates"/>.</param>
    /// <param name="all">Whether the person has chosen between what was typed here and elsewhere: then nothing typed stays aside.</param>
    public async Task ConfirmAsync(Worksheet sheet, string state, bool all = false)
    {
        await _script.AskAsync("confirm", WorksheetFields.TextsOf(sheet), state, all);
    }

    /// <summary>What the browser keeps is no longer wanted: it was signed, or put away.</summary>
    public async Task ForgetAsync()
    {
        await _script.AskAsync("forget");
    }

    public async ValueTask DisposeAsync()
    {
        await _script.DisposeAsync();
        _self.Dispose();
    }

    protected override void OnInitialized()
    {
        _first = Sheet;
        _script = new AttachedScript(Script, "./Features/Examinations/EntryForm.razor.js");
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender)
        {
            if (!await _script.AttachAsync(_root, StorageKey, _self, WorksheetFields.TextsOf(_first)))
            {
                return;
            }

            await RestoreAsync();
            _focus = FirstField();
        }

        if (_focus is { } field)
        {
            _focus = null;
            await FocusAsync(field);
        }
    }

    private static string Text(string pattern, params object[] arguments) => string.Format(TextCulture.Default, pattern, arguments);

    private static string LongDate(DateOnly date) => date.ToString("dddd d MMMM yyyy", TextCulture.Default);

    private async Task RestoreAsync()
    {
        Dictionary<string, string>? pending = await _script.AskAsync<Dictionary<string, string>>("pending");
        if (pending is null or { Count: 0 } || ReadOnly)
        {
            return;
        }

        Worksheet restored = WorksheetFields.Apply(Sheet, pending);
        IReadOnlyDictionary<string, string> before = WorksheetFields.TextsOf(Sheet);
        _restored = WorksheetFields.TextsOf(restored).Count(text => before.GetValueOrDefault(text.Key, string.Empty) != text.Value);
        if (_restored > 0)
        {
            await ChangeAsync(restored);
            string state = await Keep();
            StateHasChanged();
            await ConfirmAsync(Sheet, state);
        }
    }

    // The first thing to be measured; the first blank of the row where there is no level yet.
    private string? FirstField() =>
        Sheet.Grid.Rows is not [var first, ..]
            ? null
            : WorksheetFields.Of(
                first.Key,
                first[EntryColumn.Part].Length == 0 ? EntryColumn.Part
                    : first[EntryColumn.Level].Length == 0 ? EntryColumn.Level
                    : EntryColumn.LigamentArea
            );

    private async Task CommandAsync(string name, string? rowKey)
    {
        if (ReadOnly)
        {
            return;
        }

        if (name == SaveAndGoOn)
        {
            await GoOn.InvokeAsync();
            return;
        }

        string newKey = Guid.CreateVersion7().ToString();
        EntryGrid grid = Sheet.Grid;
        EntryGrid changed = name switch
        {
            Insert => grid.InsertBelow(rowKey, newKey),
            Repeat when rowKey is not null => grid.Repeat(rowKey, newKey),
            Strike when rowKey is not null => grid.Strike(rowKey),
            Sort => grid.Sorted(),
            _ => grid,
        };
        if (changed.Equals(grid))
        {
            return;
        }

        if (changed.Find(newKey) is { } added)
        {
            _focus = WorksheetFields.Of(newKey, added[EntryColumn.Level].Length > 0 ? EntryColumn.LigamentArea : EntryColumn.Level);
        }

        await ChangeAsync(Sheet.With(changed));
        string state = await Keep();
        await ConfirmAsync(Sheet, state);
    }

    private async Task ChangeAsync(Worksheet sheet)
    {
        Sheet = sheet;
        await SheetChanged.InvokeAsync(sheet);
    }

    private bool IsShown(CellProblem problem) => WorksheetFields.Of(problem.RowKey, problem.Column) != _halfTyped;

    private IReadOnlyList<CellProblem> ProblemsOf(EntryRow row) =>
        [.. Reading.CellProblems.Where(problem => problem.RowKey == row.Key && IsShown(problem))];

    private int NumberOf(string rowKey) => 1 + Sheet.Grid.Rows.Index().First(row => row.Item.Key == rowKey).Index;

    private static HeaderField[] Points { get; } =
    [HeaderField.Origin, HeaderField.Division, HeaderField.MedialInsertion, HeaderField.LateralInsertion];

    // Said once, beside the first of them.
    private static string? HelpOf(HeaderField point) => point == HeaderField.Origin ? ExaminationPage.FixedPointHelp : null;

    private string? ErrorOf(HeaderField field) =>
        Reading.HeaderProblems.Where(problem => problem.Field == field && WorksheetFields.Of(field) != _halfTyped).ToArray()
            is { Length: > 0 } problems
            ? string.Join(' ', problems.Select(problem => ProblemSentences.Of(problem.Problem)))
            : null;
}
