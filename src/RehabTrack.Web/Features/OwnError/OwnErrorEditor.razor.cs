using Microsoft.AspNetCore.Components;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Repeats;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Repeats;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Components.Forms;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.OwnError;

/// <summary>The page of the practice's own error. The size whose cv is about to be taken stands in the address.</summary>
public sealed partial class OwnErrorEditor
{
    private const string Address = "/practice/measurement-error";

    private static readonly IReadOnlyList<Choice<RepeatKind>> KindChoices =
    [
        .. Enum.GetValues<RepeatKind>().Select(kind => new Choice<RepeatKind>(kind, Names.Of(kind))),
    ];

    private static readonly IReadOnlyList<Choice<MeasuredSize>> SizeChoices =
    [
        .. ErrorCv.Sizes.Select(size => new Choice<MeasuredSize>(size, Names.Of(size))),
    ];

    private readonly FormProblems _takeProblems = new();
    private IReadOnlyList<Problem> _rowProblems = [];
    private IReadOnlyList<Problem> _lineProblems = [];
    private RepeatsView? _view;
    private SettingsPreview? _preview;
    private MeasuredSize? _size;
    private double? _proposed;
    private bool _fromTable;
    private bool _mayTake;
    private bool _mayEnter;
    private bool _busy;
    private string? _told;
    private string? _subject;
    private RepeatKind _kind;
    private MeasuredSize _measured;
    private string? _measurer;
    private string? _values;
    private string? _lines;

    [SupplyParameterFromQuery(Name = "take")]
    private string? TakeText { get; set; }

    [SupplyParameterFromQuery(Name = "from")]
    private string? FromText { get; set; }

    private IEnumerable<string> Measurers =>
        _view!
            .Entered.Select(row => row.Tracing.Measurer)
            .OfType<string>()
            .Distinct(StringComparer.OrdinalIgnoreCase)
            .Order(StringComparer.Ordinal);

    protected override async Task OnParametersSetAsync()
    {
        if (_view is null)
        {
            Role role = (await ActorAsync()).Role;
            _mayTake = RightsTable.ReachOf(role, Right.ChangePractice) == Reach.Practice;
            _mayEnter = RightsTable.ReachOf(role, Right.EnterExaminations) == Reach.Practice;
            await ReloadAsync();
        }

        await LookAsync();
    }

    private static IEnumerable<IGrouping<(string, RepeatKind, MeasuredSize, string?), RepeatView>> Rows(RepeatsView view) =>
        view.Entered.GroupBy(row => (row.Tracing.Subject, row.Tracing.Kind, row.Tracing.Size, row.Tracing.Measurer));

    private async Task ReloadAsync() => _view = await ReadAsync(GetRepeats, NoInput.Value);

    /// <summary>Which cv the address asks about, and what it would move.</summary>
    private async Task LookAsync()
    {
        _size = Enum.TryParse(TakeText, out MeasuredSize asked) && ErrorCv.Sizes.Contains(asked) && _mayTake ? asked : null;
        _fromTable = FromText == "table";
        _preview = null;
        _takeProblems.Take([]);
        if (_view is not { } view || _size is not { } size)
        {
            return;
        }

        RepeatStudy? study = view.Studies.FirstOrDefault(one => one.Kind == RepeatKind.SameHorseAndDay && one.Size == size);
        _proposed =
            _fromTable ? ErrorCv.Of(new MeasurementErrorSettings(), size)
            : study is { MayBecomeSetting: true } ? study.All!.Cv
            : null;
        if (_proposed is { } cv)
        {
            _preview = await ReadAsync(
                PreviewSettings,
                view.Practice.Settings with
                {
                    Error = ErrorCv.With(view.Practice.Settings.Error, size, cv),
                }
            );
        }
    }

    private async Task TakeAsync()
    {
        MeasuredSize size = _size!.Value;
        _busy = true;
        Outcome<Saved> outcome = await PressAsync(
            TakeError,
            size,
            command => new TakeErrorInput
            {
                CommandId = command,
                Version = _view!.Practice.Version,
                Size = size,
                ShownCv = _fromTable ? null : _proposed,
            }
        );
        _busy = false;
        _takeProblems.Take(outcome.Problems);
        if (outcome.Succeeded)
        {
            _told = string.Format(TextCulture.Default, OwnErrorPage.Taken, Names.Of(size), OwnErrorWords.Cv(_proposed));
            await ReloadAsync();
            Navigation.NavigateTo(Address, replace: true);
        }
        else if (ChangedMeanwhile.IsIn(outcome.Problems))
        {
            // Nothing was typed: what it would move now is shown, and it can be pressed again.
            await ReloadAsync();
            await LookAsync();
            _told = OwnErrorPage.MovedMeanwhile;
        }
    }

    private async Task AddRowAsync()
    {
        (IReadOnlyList<RepeatTracing> tracings, _rowProblems) = RepeatLines.Read("row", _subject, _kind, _measured, _measurer, _values);
        if (_rowProblems.Count == 0 && await AddAsync(tracings, problems => _rowProblems = problems))
        {
            _values = null;
        }
    }

    private async Task AddLinesAsync()
    {
        (IReadOnlyList<RepeatTracing> tracings, _lineProblems) = RepeatLines.Read(_lines);
        if (_lineProblems.Count == 0 && await AddAsync(tracings, problems => _lineProblems = problems))
        {
            _lines = null;
        }
    }

    private async Task<bool> AddAsync(IReadOnlyList<RepeatTracing> tracings, Action<IReadOnlyList<Problem>> tell)
    {
        _busy = true;
        Outcome<int> outcome = await PressAsync(
            AddRepeats,
            null,
            command => new AddRepeatsInput { CommandId = command, Tracings = tracings }
        );
        _busy = false;
        if (!outcome.Succeeded)
        {
            tell(outcome.Problems);
            return false;
        }

        _told = string.Format(TextCulture.Default, outcome.Value == 1 ? OwnErrorPage.AddedOne : OwnErrorPage.Added, outcome.Value);
        await ReloadAsync();
        return true;
    }

    private async Task PutAwayAsync(IEnumerable<RepeatView> rows)
    {
        _busy = true;
        Guid[] ids = [.. rows.Select(row => row.Id)];
        Outcome<int> outcome = await PressAsync(
            PutAwayRepeats,
            ids[0],
            command => new PutAwayRepeatsInput { CommandId = command, Ids = ids }
        );
        _busy = false;
        _told = outcome.Succeeded ? OwnErrorPage.PutAwayDone : null;
        await ReloadAsync();
    }

    /// <summary>What is wrong with the row: of one kind, or of all but the subject.</summary>
    private string? RowError(string? code)
    {
        string[] sentences =
        [
            .. _rowProblems
                .Where(problem => code is null ? problem.Code != "repeat-without-subject" : problem.Code == code)
                .Select(problem => ProblemSentences.Of(problem)),
        ];
        return sentences.Length == 0 ? null : string.Join(' ', sentences);
    }
}
