using Microsoft.AspNetCore.Components;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Components;
using RehabTrack.Web.Components.Conflicts;
using RehabTrack.Web.Components.Exercise;
using RehabTrack.Web.Components.Forms;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Plans;

/// <summary>The page on which a plan is written: every change is kept at once as a draft, and a vet signs it.</summary>
public sealed partial class PlanEditor
{
    private readonly FormProblems _problems = new();
    private readonly HashSet<Guid> _open = [];
    private ExerciseView? _view;
    private ExerciseView? _gone;
    private PlanEntry? _entry;
    private PlanEntry? _kept;
    private IReadOnlyList<PlanDifference> _differences = [];
    private string? _savedBy;
    private bool _takenOver;
    private int _met;
    private Guid? _version;
    private IReadOnlyList<ExerciseLine> _unseen = [];
    private string? _notKept;
    private bool _maySign;
    private bool _choosing;
    private bool _keeping;
    private bool _waiting;
    private Task _saving = Task.CompletedTask;
    private bool _signing;
    private int _begun;
    private Guid _reader;
    private TypedKeeper? _keeper;

    /// <summary>The horse.</summary>
    [Parameter]
    public Guid Id { get; set; }

    [Inject]
    private GetExercise GetExercise { get; set; } = default!;

    [Inject]
    private SavePlanDraft SavePlanDraft { get; set; } = default!;

    [Inject]
    private SignPlan SignPlan { get; set; } = default!;

    /// <summary>Where both wrote differently, as it stands now: typing goes on while both stand to be chosen from.</summary>
    private IReadOnlyList<FieldConflict> Conflicts =>
        [
            .. _differences
                .Where(difference => difference.Step is null || _entry!.Steps.Contains(difference.Step))
                .Select(difference => new FieldConflict(difference.Key, NameOf(difference), difference.Mine(), difference.Theirs)),
        ];

    private bool IsWaiting => _gone is not null || Conflicts.Count > 0;

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
        _kept = _entry?.Copy();
    }

    private async Task BeginAsync(PlanVersion plan)
    {
        _differences = [];
        _entry = PlanEntry.Of(plan);
        _choosing = false;
        await ForgetTypedAsync();
        await ChangedAsync();
    }

    /// <summary>Another plan stands in the fields: what was typed into the one before belongs to none of them.</summary>
    private Task ForgetTypedAsync()
    {
        _open.Clear();
        _begun++;
        return _keeper?.ForgetAsync() ?? Task.CompletedTask;
    }

    /// <summary>Whether all that was typed and left is in the draft. What cannot be read as a number is not, nor what has to be chosen about.</summary>
    private async Task<bool> TakenAsync()
    {
        await _saving;
        return _entry is { IsUnread: false } && _notKept is null && !IsWaiting;
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
    private Task KeepAsync()
    {
        if (_keeping || IsWaiting)
        {
            _waiting = true;
            return Task.CompletedTask;
        }

        _keeping = true;
        return _saving = SaveAsync();
    }

    private async Task SaveAsync()
    {
        do
        {
            _waiting = false;
            StateHasChanged();
            PlanEntry sent = _entry!.Copy();
            Outcome<Saved> outcome = await AskAsync(SavePlanDraft, new SavePlanDraftInput(Guid.CreateVersion7(), Id, _version, sent.Plan));
            if (outcome.Succeeded)
            {
                (_version, _kept, _notKept) = (outcome.Value.Version, sent, null);
            }
            else if (ChangedMeanwhile.IsIn(outcome.Problems))
            {
                await MeetAsync();
                // What nobody has to choose about is kept at once.
                _waiting = true;
            }
            else
            {
                _notKept = string.Join(" ", outcome.Problems.Select(problem => ProblemSentences.Of(problem)));
            }
        } while (_waiting && !IsWaiting);

        _keeping = false;
    }

    /// <summary>Somebody else saved: what only one of us changed is taken over, what both changed is asked.</summary>
    private async Task MeetAsync()
    {
        _met++;
        if (await ReadAsync(GetExercise, Id) is not { } now)
        {
            return;
        }

        if (now.Draft is not { } draft)
        {
            (_gone, _notKept) = (now, PlanPage.ConflictTitle);
            return;
        }

        PlanMerge merge = PlanMerge.Into(_kept, _entry!, PlanEntry.Of(draft.Plan), now.Practice.Settings.Rules);
        (_version, _kept, _differences) = (draft.Version, merge.Kept, merge.Differences);
        _takenOver = merge.Differences.Count == 0;
        _notKept = _takenOver ? null : PlanPage.ConflictTitle;
        _savedBy = string.Format(
            TextCulture.Default,
            PlanPage.ConflictBy,
            draft.WrittenBy,
            Moments.Of(draft.WrittenAt, now.Practice.TimeZone)
        );
    }

    private Task SettleAsync(IReadOnlySet<object> theirs)
    {
        foreach (PlanDifference difference in _differences.Where(difference => theirs.Contains(difference.Key)))
        {
            difference.Take();
        }

        _differences = [];
        return ChangedAsync();
    }

    private string NameOf(PlanDifference difference) =>
        difference.Step is not { } step
            ? difference.Name
            : string.Format(
                TextCulture.Default,
                FormTexts.ConflictCell,
                PlanWords.Step(_entry!.Plan, _entry.Steps.Index().First(one => one.Item == step).Index),
                difference.Name
            );

    private Task KeepMineAsync()
    {
        (_view, _version, _gone) = (_gone, null, null);
        return KeepAsync();
    }

    private Task TakeTheirsAsync()
    {
        (_view, _version, _entry, _kept, _gone, _notKept) = (_gone, null, null, null, null, null);
        return ForgetTypedAsync();
    }

    private async Task SignAsync(PlanSignature signature)
    {
        _signing = true;
        _problems.Clear();
        int met = _met;
        await KeepAsync();
        // What somebody else wrote and was taken over just now is looked at before it is signed.
        if (!IsWaiting && met == _met && _version is { } version)
        {
            Outcome<Saved> outcome = await PressAsync(
                SignPlan,
                Id,
                command => new SignPlanInput
                {
                    CommandId = command,
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
                await ForgetTypedAsync();
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
        if (ChangedMeanwhile.IsIn(problems))
        {
            await MeetAsync();
            await KeepAsync();
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
