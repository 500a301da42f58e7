using System.Globalization;
using Microsoft.AspNetCore.Components;
using MudBlazor;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Care;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Schedule;
using RehabTrack.Rechecks.Watch;
using RehabTrack.Records.Care;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Watch;
using RehabTrack.Web.Components.Pictures;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Cases;

/// <summary>The page of a case: verdict, findings, ladder, healing chart, examinations. What is looked at stands in the address.</summary>
public sealed partial class CaseSheet
{
    private CaseView? _case;
    private CaseCourse? _course;
    private CaseAnalysis? _analysis;
    private Actor? _actor;
    private ExerciseUnder? _exercise;
    private CareUnder? _care;
    private IReadOnlyList<WatchedFinding> _standing = [];
    private Rung? _rung;
    private CaseQuery _query = new();
    private DateOnly? _analysedFor;
    private bool _moved;
    private int _loads;

    /// <summary>The case.</summary>
    [Parameter]
    public Guid Id { get; set; }

    [SupplyParameterFromQuery(Name = "asof")]
    private string? AsOfText { get; set; }

    [SupplyParameterFromQuery(Name = "date")]
    private string? DateText { get; set; }

    [SupplyParameterFromQuery(Name = "examination")]
    private string? ExaminationText { get; set; }

    [SupplyParameterFromQuery(Name = "level")]
    private string? LevelText { get; set; }

    [SupplyParameterFromQuery(Name = "zone")]
    private string? ZoneText { get; set; }

    [SupplyParameterFromQuery(Name = "path")]
    private string? PathText { get; set; }

    [SupplyParameterFromQuery(Name = "who")]
    private string? WhoText { get; set; }

    [SupplyParameterFromQuery(Name = "compare")]
    private string? CompareText { get; set; }

    [SupplyParameterFromQuery(Name = "view")]
    private string? ViewText { get; set; }

    [SupplyParameterFromQuery(Name = "why")]
    private string? WhyText { get; set; }

    [SupplyParameterFromQuery(Name = "changes")]
    private string? ChangesText { get; set; }

    [SupplyParameterFromQuery(Name = "seen")]
    private string? SeenText { get; set; }

    [SupplyParameterFromQuery(Name = "visit")]
    private string? VisitText { get; set; }

    [Inject]
    private GetCase GetCase { get; set; } = default!;

    [Inject]
    private GetStanding GetStanding { get; set; } = default!;

    [Inject]
    private GetExercise GetExercise { get; set; } = default!;

    [Inject]
    private ListCare ListCare { get; set; } = default!;

    [Inject]
    private IDialogService Dialogs { get; set; } = default!;

    private DateOnly AsOf => _query.AsOf ?? _case!.Practice.Today;

    private bool MayEnter => RightsTable.ReachOf(_actor!.Role, Right.EnterExaminations) != Reach.None;

    private bool MaySign => RightsTable.ReachOf(_actor!.Role, Right.SignExaminations) != Reach.None;

    private bool MayChangeLinks => RightsTable.ReachOf(_actor!.Role, Right.ChangeLinks) != Reach.None;

    private string LadderTitle
    {
        get
        {
            int examinations = _analysis!.Burdens.Count;
            return examinations == 1
                ? CasePage.LadderOne
                : string.Format(TextCulture.Default, CasePage.Ladder, examinations.ToString(CultureInfo.InvariantCulture));
        }
    }

    protected override async Task OnParametersSetAsync()
    {
        CaseQuery before = _query;
        _query = CaseQuery.Parse(name =>
            name switch
            {
                "asof" => AsOfText,
                "date" => DateText,
                "examination" => ExaminationText,
                "level" => LevelText,
                "who" => WhoText,
                "zone" => ZoneText,
                "path" => PathText,
                "compare" => CompareText,
                "view" => ViewText,
                "why" => WhyText,
                "changes" => ChangesText,
                "seen" => SeenText,
                "visit" => VisitText,
                _ => null,
            }
        );
        _moved = _case is not null && before != _query;
        if (_case?.Id != Id)
        {
            _case = null;
            _actor = await ActorAsync();
            await ReloadAsync();
            return;
        }

        Look();
    }

    private async Task ReloadAsync()
    {
        _case = await ReadAsync(GetCase, Id);
        _analysedFor = null;
        _loads++;
        if (_case is not null)
        {
            _standing = (await AskAsync(GetStanding, Id)).ValueOrDefault ?? [];
            ExerciseView? exercise = (await AskAsync(GetExercise, _case.Horse.Id)).ValueOrDefault;
            _exercise = exercise is null ? null : ExerciseUnder.Of(exercise);
            _care = (await AskAsync(ListCare, _case.Horse.Id)).ValueOrDefault is { } care
                ? CareUnder.Of(CareUnder.OfCase(care, _case.Course.Id), exercise)
                : null;
            Look();
        }
    }

    /// <summary>Analyses for the date the address asks for, and finds the chosen place.</summary>
    private void Look()
    {
        if (_analysedFor != AsOf)
        {
            _analysedFor = AsOf;
            _course = _case!.Course;
            _analysis = _course.Examinations.Any(examination => examination.Date <= AsOf)
                ? CaseAnalyser.Analyse(_course, _case.Constraints, _case.Practice.Settings, AsOf)
                : null;
        }

        _rung = _analysis is null ? null : Rung.Find(_analysis, _course!, _query);
    }

    /// <summary>What stands today; of an earlier date, or of a closed case, what the analysis said then.</summary>
    private IReadOnlyList<WatchedFinding> StandingNow(CaseAnalysis analysis) =>
        _query.AsOf is null && _case!.IsOpen
            ? _standing
            :
            [
                .. StandingReader
                    .Of(
                        new WatchedHorse
                        {
                            Cases =
                            [
                                new WatchedCase(
                                    _course!.Id,
                                    analysis.Findings,
                                    _course
                                        .Examinations.Where(examination => examination.Date <= AsOf)
                                        .Max(examination => examination.Date),
                                    RecheckDue.None
                                ),
                            ],
                        },
                        AsOf
                    )
                    .Select(finding => new WatchedFinding(finding, null)),
            ];

    private IReadOnlyList<InjectionMark> AfterInjections => _care?.AfterInjections(_course!) ?? [];

    private IReadOnlyList<Finding> InjectionNotes =>
        InjectionMarks.Findings(
            AfterInjections,
            _course!.Examinations.Where(examination => examination.Date <= AsOf).Max(examination => examination.Date)
        );

    private IReadOnlyList<string> ChosenExaminations =>
        _rung is { } rung ? [rung.Step.ExaminationId, .. Compared(rung) is { } other ? [other.ExaminationId] : Array.Empty<string>()] : [];

    private void Choose(PlaceKey place) => Navigation.NavigateTo(Address(Rung.Choose(_query, _course!, place)));

    /// <summary>A point of the chart was chosen: the same place at that date, or the examination's worst place.</summary>
    private void ChooseExamination(string examinationId)
    {
        TrackStep[] steps =
        [
            .. _analysis!.Links.Tracks.SelectMany(track => track.Steps).Where(step => step.ExaminationId == examinationId),
        ];
        TrackStep? step =
            _rung?.Track.Steps.FirstOrDefault(one => one.ExaminationId == examinationId)
            ?? steps.MaxBy(one => one.Place.LesionPercent?.Value ?? -1);
        if (step is not null)
        {
            Choose(step.Place.Key);
        }
    }

    private void Ask(VisitQuery visit) => Navigation.NavigateTo(Address(_query with { Visit = visit }), replace: true);

    private string Address(CaseQuery query) => query.AddressOf(Id);

    private TrackStep? Compared(Rung rung) => rung.Others.FirstOrDefault(step => step.Date == _query.Compare);

    private LinkWordView? WordOn(Rung rung) =>
        _case!.LinkWords.LastOrDefault(word =>
            word.WithdrawnAt is null
            && word.Constraint.Kind == LinkConstraintKind.Pin
            && (word.Constraint.First == rung.Step.Place.Key || word.Constraint.Second == rung.Step.Place.Key)
        );

    /// <summary>The place a finding speaks of, or the last place of its track.</summary>
    private string? AddressOf(Finding finding)
    {
        Track? track = _analysis!.Links.Tracks.FirstOrDefault(one => one.Id == finding.TrackId);
        TrackStep? step =
            track?.Steps.FirstOrDefault(one => one.ExaminationId == finding.ExaminationId) ?? (track is null ? null : track.Steps[^1]);
        return step is null ? null : Address(Rung.Choose(_query, _course!, step.Place.Key));
    }

    private async Task AskLinkAsync(Rung rung, LinkConstraintKind kind)
    {
        DialogParameters<LinkDialog> parameters = new()
        {
            { dialog => dialog.CaseId, Id },
            { dialog => dialog.Analysis, _analysis! },
            { dialog => dialog.Rung, rung },
            { dialog => dialog.Kind, kind },
        };
        IDialogReference dialog = await Dialogs.ShowAsync<LinkDialog>(
            kind == LinkConstraintKind.Pin ? CasePage.DialogPin : CasePage.DialogBreak,
            parameters,
            new DialogOptions
            {
                MaxWidth = MaxWidth.Medium,
                FullWidth = true,
                CloseOnEscapeKey = true,
            }
        );
        if (await dialog.Result is { Canceled: false })
        {
            await ReloadAsync();
            StateHasChanged();
        }
    }
}
