using Microsoft.AspNetCore.Components;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Room;
using RehabTrack.Web.Components.Exercise;
using RehabTrack.Web.Components.Forms;
using RehabTrack.Web.Features.Concerns;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Days;

/// <summary>The page on which somebody of the practice enters what another person told.</summary>
public sealed partial class DaySheet
{
    private readonly FormProblems _problems = new();
    private ExerciseView? _view;
    private DayForm _form;
    private DayEntry _entry = new();
    private WorkEntry _atMost = new();
    private EntryNumbers _numbers = new();
    private DateOnly? _from;
    private DateOnly? _until;
    private string? _for;
    private string? _words;
    private string? _said;
    private TypedKeeper? _keeper;
    private Guid _reader;
    private bool _busy;

    /// <summary>The horse.</summary>
    [Parameter]
    public Guid Id { get; set; }

    [SupplyParameterFromQuery(Name = "do")]
    private string? Do { get; set; }

    [Inject]
    private GetExercise GetExercise { get; set; } = default!;

    [Inject]
    private LogDay LogDay { get; set; } = default!;

    [Inject]
    private ReportConcern ReportConcern { get; set; } = default!;

    [Inject]
    private ConcernBell Bell { get; set; } = default!;

    [Inject]
    private PauseWork PauseWork { get; set; } = default!;

    [Inject]
    private LowerWork LowerWork { get; set; } = default!;

    protected override async Task OnParametersSetAsync()
    {
        DayForm form = Enum.TryParse(Do, ignoreCase: true, out DayForm asked) && Enum.IsDefined(asked) ? asked : DayForm.Log;
        if (_view?.Horse.Id == Id && form == _form)
        {
            return;
        }

        if (_form != form)
        {
            (_form, _said) = (form, null);
            _problems.Clear();
        }

        if (_view?.Horse.Id != Id)
        {
            await BeginAsync();
        }
    }

    /// <summary>Reads the horse anew, with forms as they are before anything was typed. Who told it stays: a second entry often follows.</summary>
    private async Task BeginAsync()
    {
        _reader = (await ActorAsync()).PersonId;
        _view = await ReadAsync(GetExercise, Id);
        if (_view is { } view)
        {
            (_entry, _atMost) = (DayEntry.Of(view.Today), WorkEntry.Of(view.Today.SignedWork));
            (_from, _until, _words, _numbers) = (view.Practice.Today, null, null, new EntryNumbers());
        }
    }

    private async Task SaveAsync()
    {
        _busy = true;
        _said = await (
            _form switch
            {
                DayForm.Log => LogAsync(),
                DayForm.Concern => ConcernAsync(),
                DayForm.Away => AwayAsync(),
                DayForm.Lower => LowerAsync(),
            }
        );
        _busy = false;
        if (_said is not null)
        {
            await (_keeper?.ForgetAsync() ?? Task.CompletedTask);
            await BeginAsync();
        }
    }

    private async Task<string?> LogAsync()
    {
        if (_entry.Read(_problems) is not { } log)
        {
            return null;
        }

        Outcome<LogAnswer> outcome = await PressAsync(
            LogDay,
            Id,
            command => new LogDayInput
            {
                CommandId = command,
                HorseId = Id,
                Log = log,
                Words = _entry.ReadWords(),
                OnBehalfOf = _for,
            }
        );
        Bell.Ring(await ActorAsync(), Id, outcome);
        return Told(
            outcome,
            outcome.ValueOrDefault switch
            {
                { IsConcern: true } => DayPage.SaidSign,
                { IsEarly: true } => OutsidePages.SaidEarly,
                _ => DayPage.SaidLog,
            }
        );
    }

    private async Task<string?> ConcernAsync()
    {
        Outcome<LogAnswer> outcome = await PressAsync(ReportConcern, Id, command => new ReportConcernInput(command, Id, _words, _for));
        Bell.Ring(await ActorAsync(), Id, outcome);
        return Told(outcome, DayPage.SaidConcern);
    }

    private async Task<string?> AwayAsync() =>
        From() is { } from
            ? Told(
                await PressAsync(PauseWork, Id, command => new PauseWorkInput(command, Id, from, _until, _words, _for)),
                DayPage.SaidAway
            )
            : null;

    private async Task<string?> LowerAsync()
    {
        _numbers = new EntryNumbers();
        Work atMost = _atMost.Read(_numbers, "atMost");
        return From() is not { } from || _numbers.Any
            ? null
            : Told(
                await PressAsync(LowerWork, Id, command => new LowerWorkInput(command, Id, atMost, from, _until, _words, _for)),
                DayPage.SaidLower
            );
    }

    private DateOnly? From()
    {
        _problems.Take(_from is null ? [new Problem("from", "day-missing")] : []);
        return _from;
    }

    private string? Told<T>(Outcome<T> outcome, string said)
    {
        _problems.Take(outcome.Problems);
        return outcome.Succeeded ? said : null;
    }

    private string AddressOf(DayForm form) => $"/horses/{Id}/day?do={form.ToString().ToLowerInvariant()}";
}
