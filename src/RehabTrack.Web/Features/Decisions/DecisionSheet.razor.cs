using Microsoft.AspNetCore.Components;
using RehabTrack.Rechecks.Care;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Records.Care;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Components.Exercise;
using RehabTrack.Web.Components.Forms;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Decisions;

/// <summary>The page of a visit: what is known, what the rules suggest, the vet's decision, and what of it goes out.</summary>
public sealed partial class DecisionSheet
{
    private readonly FormProblems _problems = new();
    private readonly FormProblems _releaseProblems = new();
    private ExerciseView? _view;
    private IReadOnlyList<SizePicture> _pictures = [];
    private IReadOnlyList<OpenCaseToday> _cases = [];
    private IReadOnlyList<(OpenCaseToday Open, Suggestion Said)> _suggestions = [];
    private IReadOnlyList<ExerciseLine> _unseen = [];
    private DecisionEntry? _entry;
    private TypedKeeper? _keeper;
    private IReadOnlyDictionary<string, string> _typed = new Dictionary<string, string>(StringComparer.Ordinal);
    private IReadOnlyList<TypedView> _others = [];
    private string? _notKept;
    private Guid _reader;
    private PermitComparison? _sides;
    private Visit _visit = new();
    private IReadOnlyList<CareView> _care = [];
    private CareAnswers? _onRecord;
    private GateAhead? _gate;
    private ClosedCases? _closed;
    private AskedStep _asked;
    private bool _mayDecide;
    private bool _signing;
    private bool _justSigned;
    private bool _releasing;
    private bool _showsRelease;
    private bool _releaseConflict;

    /// <summary>The horse.</summary>
    [Parameter]
    public Guid Id { get; set; }

    [Inject]
    private GetExercise GetExercise { get; set; } = default!;

    [Inject]
    private GetTyped GetTyped { get; set; } = default!;

    [Inject]
    private KeepTyped KeepTyped { get; set; } = default!;

    [Inject]
    private GetCase GetCase { get; set; } = default!;

    [Inject]
    private ListCare ListCare { get; set; } = default!;

    [Inject]
    private SignDecision SignDecision { get; set; } = default!;

    [Inject]
    private ReleaseDecision ReleaseDecision { get; set; } = default!;

    [Inject]
    private SeeConcern SeeConcern { get; set; } = default!;

    private SuggestedMove? Suggested => _suggestions.Count == 0 ? null : _suggestions.Max(one => one.Said.Move);

    private IReadOnlyList<ConcernView> Answered => [.. _view!.Concerns.Where(concern => concern.IsAnswered)];

    protected override async Task OnParametersSetAsync()
    {
        if (_view?.Horse.Id == Id)
        {
            return;
        }

        Actor reader = await ActorAsync();
        _reader = reader.PersonId;
        _mayDecide = RightsTable.ReachOf(reader.Role, Right.DecideExercise) != Reach.None;
        await LoadAsync();
        if (_view is not null)
        {
            await TakeTypedAsync();
            Begin();
        }
    }

    /// <summary>What is being typed: by the one who reads, on whatever device, and by others.</summary>
    private async Task TakeTypedAsync()
    {
        IReadOnlyList<TypedView> typed = (await AskAsync(GetTyped, new GetTypedInput(Id, TypedForm.Decision))).ValueOrDefault ?? [];
        _typed = typed.FirstOrDefault(one => one.IsOwn)?.Fields ?? new Dictionary<string, string>(StringComparer.Ordinal);
        _others = [.. typed.Where(one => !one.IsOwn)];
    }

    private async Task<bool> KeepTypedAsync(IReadOnlyDictionary<string, string?> fields)
    {
        Outcome<Saved> outcome = await AskAsync(KeepTyped, new KeepTypedInput(Guid.CreateVersion7(), Id, TypedForm.Decision, fields));
        string? notKept = outcome.Succeeded ? null : ProblemSentences.Of(outcome.Problems[0]);
        if (outcome.Succeeded)
        {
            await TakeTypedAsync();
        }

        if (outcome.Succeeded || notKept != _notKept)
        {
            _notKept = notKept;
            StateHasChanged();
        }

        return outcome.Succeeded;
    }

    private Task ForgetTypedAsync() =>
        AskAsync(
            KeepTyped,
            new KeepTypedInput(
                Guid.CreateVersion7(),
                Id,
                TypedForm.Decision,
                new Dictionary<string, string?>(StringComparer.Ordinal),
                IsAfresh: true
            )
        );

    private async Task LoadAsync()
    {
        _view = await ReadAsync(GetExercise, Id);
        if (_view is null)
        {
            return;
        }

        List<OpenCaseToday> cases = [];
        foreach (CaseRow row in _view.Horse.Cases.Where(row => row.IsOpen))
        {
            if ((await AskAsync(GetCase, row.Id)).ValueOrDefault is { } injury)
            {
                cases.Add(OpenCaseToday.Of(injury));
            }
        }

        _cases = cases;
        IReadOnlyList<CareView>? care = (await AskAsync(ListCare, Id)).ValueOrDefault;
        _care = care ?? [];
        _onRecord = care is null ? null : CareAnswers.Of(care.Select(one => one.Entry), _view.Practice.Today);
        _gate = GateAhead.Of(_view);
        _pictures =
        [
            .. cases
                .Select(open => new SizePicture(open.Case.Course.Limb, SizeBar.Of(open.Analysis.Trend)))
                .Where(picture => picture.Bars.Count > 0),
        ];
    }

    /// <summary>A visit with nothing recorded yet but what the horse's record answers; the step asked about is the one that the next gate names.</summary>
    private void Begin()
    {
        _entry = _view is { Plan: not null } view ? new DecisionEntry(view) : null;
        VisitSigns signs = new() { PlanStart = _view?.Lines.Select(line => line.Entry).OfType<PlanSigned>().FirstOrDefault()?.From };
        _visit = new Visit { Signs = _onRecord?.Fill(signs) ?? signs };
        _asked = _gate?.Asked ?? AskedStep.More;
        Suggest();
        Try();
    }

    private void Suggest() => _suggestions = [.. _cases.Select(open => (open, open.Suggest(_asked, _visit)))];

    private void TakeVisit(Visit visit)
    {
        _visit = visit;
        Suggest();
    }

    private void TakeAsked(AskedStep asked)
    {
        _asked = asked;
        Suggest();
    }

    /// <summary>Tries the decision on all that happened.</summary>
    private void Try()
    {
        DateOnly today = _view!.Practice.Today;
        _sides =
            _entry?.Read() is { } decision && decision.From >= today && (!_entry.Places || decision.Place is not null)
                ? PermitComparison.Of(
                    _view.History,
                    new DecisionSigned
                    {
                        Order = 0,
                        RecordedOn = today,
                        Decision = decision,
                    },
                    decision.From
                )
                : null;
    }

    private async Task SignAsync()
    {
        if (_entry?.Read() is not { } decision || _entry.IsUnread)
        {
            return;
        }

        _signing = true;
        Outcome<Saved> outcome = await PressAsync(
            SignDecision,
            Id,
            command => new SignDecisionInput
            {
                CommandId = command,
                HorseId = Id,
                SeenNumber = _view!.LastNumber,
                Decision = decision,
                Visit = _visit,
                Asked = _asked,
                CorrectsId = _entry.Corrects,
                Disagreement = DecisionEntry.Differs(decision.Kind, Suggested) ? _entry.Disagreement : null,
            }
        );
        _signing = false;
        _problems.Take(outcome.Problems);
        int seen = _view!.LastNumber;
        if (outcome.Succeeded)
        {
            (_justSigned, _unseen) = (true, []);
            await (_keeper?.ForgetAsync() ?? Task.CompletedTask);
            await TakeTypedAsync();
            await LoadAsync();
            Begin();
        }
        else if (outcome.Problems.Any(problem => problem.Code == "exercise-changed-since-seen"))
        {
            // What was written meanwhile is shown, and counts as seen at the next attempt; what was typed stays.
            await LoadAsync();
            _unseen = [.. _view!.Lines.Where(line => line.Number > seen)];
            Suggest();
            Try();
        }
    }

    private ReleaseFacts FactsOf(DecisionView view)
    {
        Decision decision = ((DecisionSigned)view.Line.Entry).Decision;
        return new ReleaseFacts
        {
            Horse = _view!.Horse.Name,
            Kind = decision.Kind,
            From = decision.From,
            Until = decision.ValidUntil,
            Recheck = decision.RecheckDate,
            Injuries =
            [
                .. view
                    .Ground.Cases.Select(ground =>
                        (_cases.FirstOrDefault(open => open.Case.Id == ground.CaseId) is { } open ? open.Name : "", ground.Verdict)
                    )
                    .Where(injury => injury.Item1.Length > 0),
            ],
        };
    }

    private async Task ReleaseAsync(ReleaseWish wish)
    {
        DecisionView latest = _view!.Decisions[0];
        _releasing = true;
        Outcome<Saved> outcome = await PressAsync(
            ReleaseDecision,
            latest.Id,
            command => new ReleaseDecisionInput(command, latest.Id, latest.Version, wish.Owner, wish.Trainer, wish.WithPicture)
        );
        _releasing = false;
        _releaseConflict = ChangedMeanwhile.IsIn(outcome.Problems);
        _releaseProblems.Take(_releaseConflict ? [] : outcome.Problems);
        if (outcome.Succeeded || _releaseConflict)
        {
            _justSigned = _justSigned && !outcome.Succeeded;
            _showsRelease = true;
            await LoadAsync();
        }
    }

    /// <summary>Whether the plan ends, or has just ended, while cases are open.</summary>
    private bool GoesOnReminding =>
        _mayDecide
        && _cases.Count > 0
        && (
            _entry?.Kind == DecisionKind.Close || SinceWords.Last(_view!) is { Entry: DecisionSigned { Decision.Kind: DecisionKind.Close } }
        );

    private async Task TakeClosedAsync(ClosedCases closed)
    {
        _closed = closed;
        await LoadAsync();
        Suggest();
        Try();
    }

    private async Task SeeAsync(ConcernView concern)
    {
        await PressAsync(SeeConcern, concern.Id, command => new RecordInput(command, concern.Id, concern.Version));
        _view = await ReadAsync(GetExercise, Id);
    }
}
