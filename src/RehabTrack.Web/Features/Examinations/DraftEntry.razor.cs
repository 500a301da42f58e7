using Microsoft.AspNetCore.Components;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Components.Forms;
using RehabTrack.Web.Features.Examinations.Worksheets;

namespace RehabTrack.Web.Features.Examinations;

/// <summary>Keeps a draft while it is typed, meets another person's changes, and signs it.</summary>
public sealed partial class DraftEntry
{
    private const string AlreadySigned = "already-signed";
    private const string CaseChanged = "case-changed-since-seen";

    private readonly FormProblems _problems = new();
    private readonly SemaphoreSlim _oneAtATime = new(1, 1);
    private Guid _signCommand = Guid.CreateVersion7();
    private EntryForm? _form;
    private CaseView _case = default!;
    private EntryBackground _background = default!;
    private WorksheetTerms _terms = default!;
    private Worksheet _sheet = new();
    private Worksheet _kept = new();
    private WorksheetReading _reading = default!;
    private WorksheetMerge? _merge;
    private Worksheet _start = new();
    private Guid _version;
    private bool _takenOver;
    private bool _signedMeanwhile;
    private bool _asking;
    private bool _busy;
    private bool _lookAgain;

    /// <summary>The draft.</summary>
    [Parameter, EditorRequired]
    public ExaminationView Examination { get; set; } = default!;

    /// <summary>Its case.</summary>
    [Parameter, EditorRequired]
    public CaseView Case { get; set; } = default!;

    /// <summary>Who enters.</summary>
    [Parameter, EditorRequired]
    public Actor Actor { get; set; } = default!;

    /// <summary>Whether the page shows the signing instead of the levels.</summary>
    [Parameter]
    public bool Signing { get; set; }

    [Inject]
    private SaveDraft SaveDraft { get; set; } = default!;

    [Inject]
    private SignExamination SignExamination { get; set; } = default!;

    [Inject]
    private ArchiveDraft ArchiveDraft { get; set; } = default!;

    [Inject]
    private GetCase GetCase { get; set; } = default!;

    [Inject]
    private GetExamination GetExamination { get; set; } = default!;

    private Examination? Last => _background.LastBefore(_reading.Content.Date);

    private IReadOnlyList<string> People => [.. _background.People.Append(Actor.Name).Distinct(StringComparer.Ordinal)];

    private string StorageKey => $"rehabtrack.draft.{Examination.Id}.{Actor.PersonId}";

    protected override void OnInitialized()
    {
        Look(Case);
        _version = Examination.Version;
        _kept = SheetOf(Examination);
        // Who measures is most often who examines; it stands above the grid, to be changed there.
        Take(
            Examination.Typed is null && _kept[HeaderField.Measurer].Length == 0
                ? _kept.With(HeaderField.Measurer, MeasurerNames.AsBefore(_kept[HeaderField.Examiner], _background.Measurers))
                : _kept
        );
    }

    private void Look(CaseView injury)
    {
        _case = injury;
        _background = new EntryBackground(
            injury,
            Examination.Id,
            Examination.Content.OutsidePractice is null ? ExaminationState.Signed : ExaminationState.Outside
        );
        _terms = new WorksheetTerms
        {
            Today = injury.Practice.Today,
            BirthDate = injury.Horse.BirthDate,
            Limb = injury.Course.Limb,
            ExaminationId = Examination.Id.ToString(),
            KeptDate = Examination.Content.Date,
            Kept = Examination.Content,
        };
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            _oneAtATime.Dispose();
        }

        base.Dispose(disposing);
    }

    private static string NewKey() => Guid.CreateVersion7().ToString();

    private Worksheet SheetOf(ExaminationView examination) =>
        Worksheet.FromJson(examination.Typed) ?? Worksheet.Of(examination.Content, true, _background.EchogenicityScale, NewKey);

    private void Take(Worksheet sheet)
    {
        if (!sheet.Equals(_sheet))
        {
            // What was meant to be signed was another text.
            _signCommand = Guid.CreateVersion7();
        }

        _sheet = sheet;
        _reading = WorksheetReader.Read(sheet, _terms);
        if (_merge is not null)
        {
            // Typing goes on while both values stand to be chosen from.
            _merge = WorksheetMerge.Of(_start, sheet, _kept);
        }
    }

    private async Task<string> KeepAsync()
    {
        await _oneAtATime.WaitAsync(Leaving);
        try
        {
            return await SaveAsync();
        }
        finally
        {
            _oneAtATime.Release();
        }
    }

    private async Task<string> SaveAsync()
    {
        if (_merge is not null || _signedMeanwhile)
        {
            return EntryStates.Waiting;
        }

        Worksheet sent = _sheet;
        if (sent.Equals(_kept) && Examination.Typed is not null)
        {
            return EntryStates.Sent;
        }

        Outcome<SavedDraft> outcome = await AskAsync(
            SaveDraft,
            new SaveDraftInput
            {
                CommandId = Guid.CreateVersion7(),
                Id = Examination.Id,
                Version = _version,
                Content = _reading.Content,
                Typed = sent.ToJson(),
            }
        );
        if (outcome.Succeeded)
        {
            _version = outcome.Value.Version;
            _kept = sent;
            _problems.Clear();
            return EntryStates.Sent;
        }

        if (ChangedMeanwhile.IsIn(outcome.Problems))
        {
            await MeetAsync();
            return await SaveAsync();
        }

        _signedMeanwhile = outcome.Problems.Any(problem => problem.Code == AlreadySigned);
        _problems.Take(_signedMeanwhile ? [] : outcome.Problems);
        StateHasChanged();
        return EntryStates.NotSent;
    }

    /// <summary>Somebody else saved: what only one of us changed is taken over, what both changed is asked.</summary>
    private async Task MeetAsync()
    {
        if (await ReadAsync(GetExamination, Examination.Id) is not { } theirs)
        {
            return;
        }

        if (theirs.State != ExaminationState.Draft)
        {
            _signedMeanwhile = true;
            return;
        }

        Worksheet saved = SheetOf(theirs);
        WorksheetMerge merge = WorksheetMerge.Of(_kept, _sheet, saved);
        _version = theirs.Version;
        _start = _kept;
        _kept = saved;
        Take(merge.Merged);
        _takenOver = merge.Differences.Count == 0;
        _merge = _takenOver ? null : merge;
        StateHasChanged();
    }

    private async Task SettleAsync(Worksheet chosen)
    {
        _merge = null;
        Take(chosen);
        string state = await KeepAsync();
        StateHasChanged();
        if (_form is not null)
        {
            await _form.ConfirmAsync(_sheet, state, all: true);
        }
    }

    private async Task GoOn()
    {
        await KeepAsync();
        if (_merge is null && !_signedMeanwhile)
        {
            Navigation.NavigateTo($"/examinations/{Examination.Id}?step=sign");
        }
    }

    private async Task SignAsync()
    {
        if (_busy)
        {
            return;
        }

        _busy = true;
        // What stands on the page now is what is signed: were another person's typing taken over below, it must be looked at first.
        string seen = _background.HashWith(_reading.Examination);
        if (await KeepAsync() == EntryStates.Sent)
        {
            Outcome<Saved> outcome = await AskAsync(
                SignExamination,
                new SignExaminationInput(_signCommand, Examination.Id, _version, seen)
            );
            if (outcome.Succeeded)
            {
                Navigation.NavigateTo($"/cases/{Case.Id}");
                return;
            }

            if (ChangedMeanwhile.IsIn(outcome.Problems))
            {
                await MeetAsync();
            }
            else if (outcome.Problems.Any(problem => problem.Code == CaseChanged))
            {
                await LookAgainAsync();
                _problems.Take(outcome.Problems);
            }
            else
            {
                _problems.Take(outcome.Problems);
            }
        }

        _busy = false;
    }

    /// <summary>The case is another than the one on the page: reads it anew, so that the verdict shown is the one to be signed.</summary>
    private async Task LookAgainAsync()
    {
        if (await ReadAsync(GetCase, Case.Id) is { } now)
        {
            Look(now);
            Take(_sheet);
            _lookAgain = true;
        }
    }

    private async Task DiscardAsync()
    {
        await KeepAsync();
        Outcome<Saved> outcome = await AskAsync(ArchiveDraft, new RecordInput(Guid.CreateVersion7(), Examination.Id, _version));
        if (outcome.Succeeded)
        {
            if (_form is not null)
            {
                await _form.ForgetAsync();
            }

            Navigation.NavigateTo($"/cases/{Case.Id}");
            return;
        }

        _asking = false;
        _problems.Take(outcome.Problems);
    }
}
