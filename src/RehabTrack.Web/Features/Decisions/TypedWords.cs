using RehabTrack.Rechecks.Exercise;
using RehabTrack.Records.Exercise;
using RehabTrack.Web.Components.Exercise;
using RehabTrack.Web.Components.Forms;
using RehabTrack.Web.Components.Suggestions;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Decisions;

/// <summary>
/// What is typed into a decision, told without its form: the words that stand beside a field, and those that the form shows for what is
/// chosen in it.
/// </summary>
public sealed class TypedWords
{
    private readonly Dictionary<string, (string Name, Func<string, string> Value)> _fields = new(StringComparer.Ordinal);
    private readonly List<string> _order = [];

    /// <summary>The words of the fields of a decision on a plan.</summary>
    /// <param name="plan">The plan in force.</param>
    /// <param name="past">The decisions that were signed before.</param>
    public TypedWords(PlanVersion plan, IReadOnlyList<DecisionView> past)
    {
        Add("lameness", DecisionPage.Lameness, LamenessChoices.All);
        Add("lameness-context", DecisionPage.LamenessContext);
        Add("flexion-seconds", DecisionPage.FlexionSeconds);
        Add("flexion-response", DecisionPage.FlexionResponse, DecisionChoices.Grades);
        Add("heat", DecisionPage.Heat, DecisionChoices.Grades);
        Add("swelling", DecisionPage.Swelling, DecisionChoices.Grades);
        Add("pain", DecisionPage.Pain, DecisionChoices.Grades);
        Add("asked-step", SuggestionTexts.Asked, VisitChoices.Steps);
        Add("pain-back", SuggestionTexts.PainBackAsked, VisitChoices.Answers);
        Add("sound", SuggestionTexts.SoundAsked, VisitChoices.Answers);
        Add("sound-at-trot", SuggestionTexts.SoundAtTrotAsked, VisitChoices.Answers);
        Add("plan-start", SuggestionTexts.PlanStartAsked, Day);
        Add("medicine", SuggestionTexts.MedicineAsked, VisitChoices.Answers);
        Add("shock-wave", SuggestionTexts.ShockWaveAsked, VisitChoices.Answers);
        Add("shock-wave-date", SuggestionTexts.ShockWaveDateAsked, Day);
        Add("nerve-cut", SuggestionTexts.NeurectomyAsked, VisitChoices.Answers);
        Add("visit-note", DecisionPage.Note);
        Add("kind", DecisionPage.Decision, text => Enum.TryParse(text, out DecisionKind kind) ? Names.AsTitle(Names.Of(kind)) : text);
        Add("decision-from", DecisionPage.From, Day);
        Add("decision-step", DecisionPage.PlaceStep, DecisionChoices.Steps(plan));
        Add("decision-days", DecisionPage.PlaceDays);
        Add("decision-valid", DecisionPage.OtherUntil, Day);
        Add("decision-recheck", DecisionPage.Recheck, Day);
        foreach (Gait gait in PlanRows.Gaits)
        {
            Add($"limit-{gait}".ToLowerInvariant(), Within(DecisionPage.Limits, Names.Of(gait)));
        }

        Add("decision-has-floor", DecisionPage.HasFloor, Tick);
        foreach (Gait gait in PlanRows.Gaits)
        {
            Add(
                $"decision-floor-{gait}".ToLowerInvariant(),
                Within(PlanPage.FloorTitle, string.Format(TextCulture.Default, ExerciseTexts.GaitMinutes, Names.Of(gait)))
            );
        }

        Add("decision-floor-outings", Within(PlanPage.FloorTitle, ExerciseTexts.Outings));
        Add("decision-floor-days", Within(PlanPage.FloorTitle, ExerciseTexts.DaysAWeek));
        Add("decision-floor-circles", Within(PlanPage.FloorTitle, ExerciseTexts.CirclesAndGround), WorkChoices.Circles);
        Add("decision-floor-turnout", Within(PlanPage.FloorTitle, ExerciseTexts.Standing), WorkChoices.Turnout);
        Add(
            "decision-corrects",
            DecisionPage.Corrects,
            [.. DecisionChoices.Corrects(past), new(null, DecisionPage.CorrectsNone) { Key = "" }]
        );
        Add("decision-reason", DecisionPage.Reason);
        Add("decision-disagreement", DecisionPage.OtherDisagreement);
    }

    /// <summary>The words of a field; a tick of a set is named by its own words.</summary>
    public string NameOf(string field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return _fields.TryGetValue(field, out (string Name, Func<string, string>) words)
            ? words.Name
            : field.Replace("|", ": ", StringComparison.Ordinal);
    }

    /// <summary>What is typed or chosen in a field, as its form shows it.</summary>
    public string ValueOf(string field, string text) =>
        _fields.TryGetValue(field, out (string, Func<string, string> Value) words) ? words.Value(text) : Tick(text);

    /// <summary>The place of a field in the form; what has none stands last.</summary>
    public int PlaceOf(string field) => _order.IndexOf(field) is >= 0 and var at ? at : int.MaxValue;

    private void Add(string field, string name, Func<string, string>? value = null)
    {
        _order.Add(field);
        _fields.Add(field, (name, value ?? (text => text)));
    }

    private void Add<T>(string field, string name, IReadOnlyList<Choice<T>> choices) =>
        Add(
            field,
            name,
            text => choices.Where((choice, index) => (choice.Key ?? EntryNumbers.Text(index)) == text).FirstOrDefault()?.Text ?? text
        );

    private static string Within(string whole, string part) => string.Format(TextCulture.Default, FormTexts.ConflictCell, whole, part);

    private static string Day(string text) => DayText.Read(text) is { } day ? Figures.Date(day) : text;

    private static string Tick(string text) =>
        text switch
        {
            "true" => SuggestionTexts.Yes,
            "false" => SuggestionTexts.No,
            _ => text,
        };
}
