using Microsoft.AspNetCore.Components;
using RehabTrack.Records.Care;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Rights;
using RehabTrack.Web.Components.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Timeline;

/// <summary>The time axis of a horse: its cases, its exercise, and what was given and seen, one under the other.</summary>
public sealed partial class HorseTime
{
    private const int ShortestDays = 28;

    private ExerciseView? _view;
    private IReadOnlyList<TimeCase> _cases = [];
    private IReadOnlyList<CareView> _onRecord = [];
    private CareUnder? _care;
    private ExerciseUnder? _exercise;
    private (DateOnly From, DateOnly To) _axis;
    private CareDraft? _draft;
    private string? _said;
    private Guid _reader;
    private bool _mayDecide;

    /// <summary>The horse.</summary>
    [Parameter]
    public Guid Id { get; set; }

    [SupplyParameterFromQuery(Name = "do")]
    private string? DoText { get; set; }

    [SupplyParameterFromQuery(Name = "entry")]
    private string? EntryText { get; set; }

    [Inject]
    private GetExercise GetExercise { get; set; } = default!;

    [Inject]
    private GetCase GetCase { get; set; } = default!;

    [Inject]
    private ListCare ListCare { get; set; } = default!;

    protected override async Task OnParametersSetAsync()
    {
        if (_view?.Horse.Id != Id)
        {
            Actor actor = await ActorAsync();
            (_reader, _mayDecide) = (actor.PersonId, RightsTable.ReachOf(actor.Role, Right.DecideExercise) != Reach.None);
            await LoadAsync();
        }

        if (_view is { } view)
        {
            Begin(view.Practice.Today);
        }
    }

    private async Task LoadAsync()
    {
        _view = await ReadAsync(GetExercise, Id);
        if (_view is null)
        {
            return;
        }

        List<TimeCase> cases = [];
        foreach (CaseRow row in _view.Horse.Cases)
        {
            if ((await AskAsync(GetCase, row.Id)).ValueOrDefault is { } injury)
            {
                cases.Add(TimeCase.Of(injury));
            }
        }

        _cases = cases;
        _onRecord = (await AskAsync(ListCare, Id)).ValueOrDefault ?? [];
        _care = CareUnder.Of(_onRecord, _view);
        _exercise = ExerciseUnder.Of(_view);
        // Never so short that its marks stand on each other.
        DateOnly today = _view.Practice.Today;
        DateOnly first = First();
        _axis = (first < today.AddDays(-ShortestDays) ? first : today.AddDays(-ShortestDays), today);
    }

    // What is typed stays typed while the page is drawn anew.
    private void Begin(DateOnly today)
    {
        Guid? entry = Guid.TryParse(EntryText, out Guid id) ? id : null;
        CareView? corrected = DoText == "correct" ? _onRecord.FirstOrDefault(care => care.Id == entry) : null;
        _draft =
            corrected is not null ? (_draft?.Id == corrected.Id ? _draft : new CareDraft(corrected))
            : DoText == "enter" ? (_draft is { Id: null } ? _draft : new CareDraft(today))
            : null;
        if (_draft is not null)
        {
            _said = null;
        }
    }

    private async Task SavedAsync()
    {
        await LoadAsync();
        _said = TimelinePage.Saved;
        Navigation.NavigateTo(Address(null));
    }

    private DateOnly First() =>
        _cases
            .SelectMany(one => one.Case.Course.Examinations.Select(examination => examination.Date))
            .Concat(_cases.Select(one => one.Case.Course.Onset).OfType<DateOnly>())
            .Concat(_care!.Marks.Select(mark => mark.From))
            .Concat(_view!.Lines.Select(line => line.Date))
            .Append(_view.Practice.Today)
            .Min();

    private string Address(string? wish) => $"/horses/{Id}/time{(wish is null ? "" : "?" + wish)}";
}
