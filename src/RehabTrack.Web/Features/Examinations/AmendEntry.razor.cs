using Microsoft.AspNetCore.Components;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Components.Forms;
using RehabTrack.Web.Features.Examinations.Worksheets;

namespace RehabTrack.Web.Features.Examinations;

/// <summary>Amends an examination that counts.</summary>
public sealed partial class AmendEntry
{
    private readonly FormProblems _problems = new();
    private Guid _command = Guid.CreateVersion7();
    private EntryForm? _form;
    private CaseView _case = default!;
    private EntryBackground _background = default!;
    private CaseAnalysis _standing = default!;
    private CaseAnalysis? _amended;
    private WorksheetTerms _terms = default!;
    private Worksheet _start = new();
    private Worksheet _sheet = new();
    private WorksheetReading _reading = default!;
    private WorksheetMerge? _merge;
    private Worksheet _before = new();
    private Guid _version;
    private string? _reason;
    private bool _busy;

    /// <summary>The examination as it counts.</summary>
    [Parameter, EditorRequired]
    public ExaminationView Examination { get; set; } = default!;

    /// <summary>Its case.</summary>
    [Parameter, EditorRequired]
    public CaseView Case { get; set; } = default!;

    /// <summary>The vet who amends.</summary>
    [Parameter, EditorRequired]
    public Actor Actor { get; set; } = default!;

    [Inject]
    private AmendExamination AmendExamination { get; set; } = default!;

    [Inject]
    private GetCase GetCase { get; set; } = default!;

    [Inject]
    private GetExamination GetExamination { get; set; } = default!;

    private string StorageKey => $"rehabtrack.amend.{Examination.Id}.{Actor.PersonId}";

    private IReadOnlyList<string> People => [.. _background.People.Append(Actor.Name).Distinct(StringComparer.Ordinal)];

    private IReadOnlyList<string> Changes => [.. WorksheetChanges.Between(_start, _sheet)];

    protected override void OnInitialized()
    {
        Look(Case);
        _version = Examination.Version;
        _terms = TermsOf(Examination);
        _start = SheetOf(Examination);
        Take(_start);
    }

    private void Look(CaseView injury)
    {
        _case = injury;
        _background = new EntryBackground(injury, Examination.Id, Examination.State);
        _standing = _background.Standing;
    }

    private WorksheetTerms TermsOf(ExaminationView examination) =>
        new()
        {
            Today = _case.Practice.Today,
            BirthDate = _case.Horse.BirthDate,
            Limb = _case.Course.Limb,
            ExaminationId = examination.Id.ToString(),
            KeptDate = examination.Content.Date,
            Kept = examination.Content,
        };

    private Worksheet SheetOf(ExaminationView examination) =>
        Worksheet.Of(examination.Content, false, _background.EchogenicityScale, () => Guid.CreateVersion7().ToString());

    private void Take(Worksheet sheet)
    {
        if (!sheet.Equals(_sheet))
        {
            _command = Guid.CreateVersion7();
        }

        _sheet = sheet;
        _reading = WorksheetReader.Read(sheet, _terms);
        _amended = _reading.IsClean && Changes.Count > 0 ? _background.With(_reading.Examination) : null;
        if (_merge is not null)
        {
            _merge = WorksheetMerge.Of(_before, sheet, _start);
        }
    }

    private async Task ShowAsync()
    {
        if (_form is not null)
        {
            await _form.FocusElementAsync("reason");
        }
    }

    private async Task AmendAsync()
    {
        if (_busy)
        {
            return;
        }

        _busy = true;
        Outcome<Saved> outcome = await AskAsync(
            AmendExamination,
            new AmendExaminationInput
            {
                CommandId = _command,
                Id = Examination.Id,
                Version = _version,
                Reason = _reason ?? string.Empty,
                SeenHash = _background.HashWith(_reading.Examination),
                Content = _reading.Content,
            }
        );
        _busy = false;
        if (outcome.Succeeded)
        {
            await LeaveAsync();
            return;
        }

        if (ChangedMeanwhile.IsIn(outcome.Problems))
        {
            await MeetAsync();
            return;
        }

        if (outcome.Problems.Any(problem => problem.Code == "case-changed-since-seen"))
        {
            await LookAgainAsync();
        }

        _problems.Take(outcome.Problems);
    }

    /// <summary>The case is another than the one on the page: reads it anew, so that the verdict shown is the one to be signed.</summary>
    private async Task LookAgainAsync()
    {
        if (await ReadAsync(GetCase, Case.Id) is { } now)
        {
            Look(now);
            _terms = _terms with { Today = now.Practice.Today };
            Take(_sheet);
        }
    }

    private async Task MeetAsync()
    {
        if (await ReadAsync(GetExamination, Examination.Id) is not { } theirs)
        {
            return;
        }

        Worksheet saved = SheetOf(theirs);
        WorksheetMerge merge = WorksheetMerge.Of(_start, _sheet, saved);
        _version = theirs.Version;
        _terms = TermsOf(theirs);
        _before = _start;
        _start = saved;
        Take(merge.Merged);
        _merge = merge.Differences.Count == 0 ? null : merge;
        _problems.Take([new Problem(string.Empty, "amended-meanwhile")]);
        StateHasChanged();
        if (_form is not null)
        {
            await _form.ConfirmAsync(_sheet, EntryStates.Kept, all: true);
        }
    }

    private async Task SettleAsync(Worksheet chosen)
    {
        _merge = null;
        _problems.Clear();
        Take(chosen);
        StateHasChanged();
        if (_form is not null)
        {
            await _form.ConfirmAsync(_sheet, EntryStates.Kept, all: true);
        }
    }

    private async Task LeaveAsync()
    {
        if (_form is not null)
        {
            await _form.ForgetAsync();
        }

        Navigation.NavigateTo($"/examinations/{Examination.Id}", forceLoad: false, replace: true);
    }
}
