using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Web.Components.Forms;

namespace RehabTrack.Web.Features.Cases;

/// <summary>The step asked about and what a visit found, as one word of the address: "trot.sound-yes.wave-2026-03-14".</summary>
public sealed record VisitQuery
{
    private static readonly (string Word, AskedStep Step)[] Steps =
    [
        ("more", AskedStep.More),
        ("trot", AskedStep.Trot),
        ("canter", AskedStep.CanterOrGallop),
    ];

    /// <summary>The step asked about.</summary>
    public AskedStep Asked { get; init; }

    /// <summary>What the visit found.</summary>
    public VisitSigns Signs { get; init; } = new();

    /// <summary>Reads the word; what cannot be read is left out.</summary>
    public static VisitQuery Parse(string? text)
    {
        string[] words = (text ?? "").Split('.', StringSplitOptions.RemoveEmptyEntries);
        bool? Answer(string name) =>
            words.Contains($"{name}-yes", StringComparer.Ordinal) ? true
            : words.Contains($"{name}-no", StringComparer.Ordinal) ? false
            : null;
        DateOnly? Date(string name) =>
            words
                .Where(word => word.StartsWith($"{name}-", StringComparison.Ordinal))
                .Select(word => DayText.Read(word[(name.Length + 1)..]))
                .FirstOrDefault(date => date is not null);
        return new VisitQuery
        {
            Asked = Steps.FirstOrDefault(step => words.Contains(step.Word, StringComparer.Ordinal)).Step,
            Signs = new VisitSigns
            {
                HeatSwellingOrPain = Answer("signs"),
                PainBackWithWork = Answer("pain"),
                Sound = Answer("sound"),
                SoundAtTrotInHand = Answer("trotsound"),
                UnderAntiInflammatory = Answer("medicine"),
                HadShockWave = Answer("wave"),
                LastShockWave = Date("wave"),
                HadNeurectomy = Answer("nerve"),
                PlanStart = Date("plan"),
            },
        };
    }

    /// <summary>The word; null when nothing was asked or answered.</summary>
    public string? Text
    {
        get
        {
            string?[] words =
            [
                Asked == AskedStep.More ? null : Steps.First(step => step.Step == Asked).Word,
                Word("signs", Signs.HeatSwellingOrPain),
                Word("pain", Signs.PainBackWithWork),
                Word("sound", Signs.Sound),
                Word("trotsound", Signs.SoundAtTrotInHand),
                Word("medicine", Signs.UnderAntiInflammatory),
                Word("wave", Signs.HadShockWave),
                Word("wave", Signs.LastShockWave),
                Word("nerve", Signs.HadNeurectomy),
                Word("plan", Signs.PlanStart),
            ];
            string text = string.Join('.', words.OfType<string>());
            return text.Length == 0 ? null : text;
        }
    }

    private static string? Word(string name, bool? answer) =>
        answer switch
        {
            null => null,
            true => $"{name}-yes",
            false => $"{name}-no",
        };

    private static string? Word(string name, DateOnly? date) => date is null ? null : $"{name}-{DayText.Of(date)}";
}
