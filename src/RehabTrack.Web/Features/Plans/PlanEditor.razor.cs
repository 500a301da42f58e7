using Microsoft.AspNetCore.Components;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Components.Forms;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Plans;

/// <summary>The page on which a plan is written: every change is kept at once as a draft, and a vet signs it.</summary>
public sealed partial class PlanEditor
{
    private readonly FormProblems _problems = new();
    private readonly HashSet<Guid> _open = [];
    private ExerciseView? _view;
    private ExerciseView? _conflict;
    private PlanEntry? _entry;
    private Guid? _version;
    private IReadOnlyList<ExerciseLine> _unseen = [];
    private string? _notKept;
    private bool _maySign;
    private bool _choosing;
    private bool _keeping;
    private bool _waiting;
    private bool _signing;
    private int _begun;
    private Guid _reader;

    /// <summary>The horse.</summary>
    [Parameter]
    public Guid Id { get; set; }

    [Inject]
    private GetExercise GetExercise { get; set; } = default!;

    [Inject]
    private SavePlanDraft SavePlanDraft { get; set; } = default!;

    [Inject]
    private SignPlan SignPlan { get; set; } = default!;

    private string KeepState =>
        _keeping ? PlanPage.Keeping
        : _notKept is { } why ? string.Format(TextCulture.Default, PlanPage.NotKept, why)
        : _version is null ? ""
        : _entry is { IsUnread: true } ? PlanPage.NotKeptUnread
        : PlanPage.KeptAt;

    protected override async Task OnParametersSetAsync()
    {
        if (_view?.Horse.Id == Id)
        {
            return;
        }

        Actor reader = await ActorAsync();
        _reader = reader.PersonId;
        _maySign = RightsTable.ReachOf(reader.Role, Right.DecideExercise) != Reach.None;
        _view = await ReadAsync(GetExercise, Id);
        _version = _view?.Draft?.Version;
        _entry = _view?.Draft is { } draft ? PlanEntry.Of(draft.Plan) : null;
    }

    private Task BeginAsync(PlanVersion plan)
    {
        _entry = PlanEntry.Of(plan);
        _choosing = false;
        _open.Clear();
        _begun++;
        return ChangedAsync();
    }

    private Task AddAsync()
    {
        _open.Add(_entry!.Add().Key);
        return ChangedAsync();
    }

    private void Fold(StepEntry step)
    {
        if (!_open.Remove(step.Key))
        {
            _open.Add(step.Key);
        }
    }

    private Task SetAsync(Action change)
    {
        change();
        return ChangedAsync();
    }

    private Task ChangedAsync()
    {
        _entry!.Read();
        return KeepAsync();
    }

    /// <summary>Keeps what is written. While one save is under way the next waits, and takes all that was typed meanwhile.</summary>
    private async Task KeepAsync()
    {
        if (_keeping || _conflict is not null)
        {
            _waiting = true;
            return;
        }

        _keeping = true;
        do
        {
            _waiting = false;
            StateHasChanged();
            Outcome<Saved> outcome = await AskAsync(
                SavePlanDraft,
                new SavePlanDraftInput(Guid.CreateVersion7(), Id, _version, _entry!.Plan)
            );
            if (outcome.Succeeded)
            {
                (_version, _notKept) = (outcome.Value.Version, null);
            }
            else if (outcome.Problems.Any(problem => problem.Code == "changed-meanwhile"))
            {
                _conflict = await ReadAsync(GetExercise, Id);
                _notKept = PlanPage.ConflictTitle;
            }
            else
            {
                _notKept = string.Join(" ", outcome.Problems.Select(problem => ProblemSentences.Of(problem)));
            }
        } while (_waiting && _conflict is null);

        _keeping = false;
    }

    private Task KeepMineAsync()
    {
        _view = _conflict;
        _version = _conflict!.Draft?.Version;
        _conflict = null;
        return KeepAsync();
    }

    private void TakeTheirs()
    {
        _view = _conflict;
        _version = _conflict!.Draft?.Version;
        _entry = _conflict.Draft is { } draft ? PlanEntry.Of(draft.Plan) : null;
        (_conflict, _notKept) = (null, null);
        _open.Clear();
        _begun++;
    }

    private async Task SignAsync(PlanSignature signature)
    {
        _signing = true;
        _problems.Clear();
        await KeepAsync();
        if (_conflict is null && _version is { } version)
        {
            Outcome<Saved> outcome = await AskAsync(
                SignPlan,
                new SignPlanInput
                {
                    CommandId = Guid.CreateVersion7(),
                    HorseId = Id,
                    Version = version,
                    SeenNumber = _view!.LastNumber,
                    From = signature.From,
                    Place = signature.Place,
                    IsAdvance = signature.IsAdvance,
                    RecheckDate = signature.RecheckDate,
                }
            );
            if (outcome.Succeeded)
            {
                Navigation.NavigateTo($"/horses/{Id}/plan");
                return;
            }

            await TellAsync(outcome.Problems);
        }

        _signing = false;
    }

    /// <summary>Says why it was not signed. What was written meanwhile is shown, and counts as seen at the next attempt.</summary>
    private async Task TellAsync(IReadOnlyList<Rechecks.Quantities.Problem> problems)
    {
        if (problems.Any(problem => problem.Code == "changed-meanwhile"))
        {
            _conflict = await ReadAsync(GetExercise, Id);
            return;
        }

        _problems.Take(problems);
        if (problems.Any(problem => problem.Code == "exercise-changed-since-seen") && await ReadAsync(GetExercise, Id) is { } now)
        {
            int seen = _view!.LastNumber;
            _unseen = [.. now.Lines.Where(line => line.Number > seen)];
            _view = now;
        }
    }
}
