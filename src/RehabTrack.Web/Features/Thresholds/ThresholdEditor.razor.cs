using Microsoft.AspNetCore.Components;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Components.Conflicts;
using RehabTrack.Web.Components.Forms;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Thresholds;

/// <summary>The page of the thresholds.</summary>
public sealed partial class ThresholdEditor
{
    private static readonly IReadOnlyList<(string Title, string Lead, IReadOnlyList<ThresholdField> Fields)> Groups =
    [
        (ThresholdTexts.VerdictTitle, ThresholdTexts.VerdictLead, ThresholdFields.OfVerdict),
        (ThresholdTexts.RateTitle, ThresholdTexts.RateLead, ThresholdFields.OfRate),
        (ThresholdTexts.SizeTitle, ThresholdTexts.SizeLead, ThresholdFields.OfSize),
    ];

    private readonly FormProblems _problems = new();
    private readonly Dictionary<string, string?> _texts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Problem> _wrong = new(StringComparer.Ordinal);
    private SharedFields _fields = default!;
    private PracticeView? _practice;
    private bool _mayChange;
    private bool _saving;
    private bool _saved;
    private bool _moved;
    private ElementReference _moves;
    private (AnalysisSettings Settings, SettingsPreview Preview)? _asked;
    private Guid _command = Guid.CreateVersion7();

    protected override async Task OnInitializedAsync()
    {
        _mayChange = RightsTable.ReachOf((await ActorAsync()).Role, Right.ChangePractice) == Reach.Practice;
        await ReloadAsync();
    }

    private async Task ReloadAsync()
    {
        if (await ReadAsync(GetPractice, NoInput.Value) is { } practice)
        {
            Show(practice);
            _fields = new SharedFields(
                StateHasChanged,
                [
                    .. ThresholdFields.All.Select(field =>
                        SharedField.Words(field.Row, field.Label, () => _texts[field.Name], text => _texts[field.Name] = text)
                    ),
                ]
            );
        }
    }

    private void Show(PracticeView practice)
    {
        _practice = practice;
        Show(practice.Settings);
    }

    private void Show(AnalysisSettings settings)
    {
        _wrong.Clear();
        foreach (ThresholdField field in ThresholdFields.All)
        {
            _texts[field.Name] = field.Written(SettingRanges.ValueOf(settings, field.Name));
        }
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        // What would move stands above the form: the reader is led there.
        if (_moved)
        {
            _moved = false;
            await _moves.FocusAsync();
        }
    }

    /// <summary>Shows what the typed thresholds would move; nothing is kept before somebody has seen that.</summary>
    private async Task LookAsync()
    {
        (_saved, _asked) = (false, null);
        if (Typed() is not { } settings)
        {
            return;
        }

        _saving = true;
        Outcome<SettingsPreview> outcome = await AskAsync(PreviewSettings, settings);
        _saving = false;
        _problems.Take(outcome.Problems);
        _asked = outcome.Succeeded ? (settings, outcome.Value) : null;
        _moved = _asked is not null;
    }

    private async Task SaveAsync(AnalysisSettings settings)
    {
        _saving = true;
        Outcome<Saved>? outcome = await SaveSharedAsync(
            _fields,
            _practice!.Id,
            ChangePractice,
            () => ChangePracticeInput.Of(_practice, _command) with { Settings = settings },
            () => TryReadAsync(GetPractice, NoInput.Value),
            Show
        );
        _saving = false;
        _command = Guid.CreateVersion7();
        _problems.Take(outcome?.Problems ?? []);
        (_saved, _asked) = (outcome is { Succeeded: true }, null);
        if (_saved)
        {
            await ReloadAsync();
        }
    }

    /// <summary>The settings as the form has them; null when something in it must be mended first.</summary>
    private AnalysisSettings? Typed()
    {
        _wrong.Clear();
        AnalysisSettings settings = _practice!.Settings;
        foreach (ThresholdField field in ThresholdFields.All)
        {
            (AnalysisSettings? taken, Problem? problem) = field.Take(settings, _texts[field.Name]);
            if (problem is not null)
            {
                _wrong[field.Name] = problem;
            }

            settings = taken ?? settings;
        }

        return _wrong.Count == 0 ? settings : null;
    }

    private string? ErrorOf(ThresholdField field) =>
        _wrong.TryGetValue(field.Name, out Problem? problem) ? ProblemSentences.Of(problem) : _problems.For($"settings.{field.Name}");

    private static string HelpOf(ThresholdField field) =>
        string.Format(TextCulture.Default, SuggestionTexts.UsualIs, field.Written(field.Usual.Value), field.Usual.Source);
}
