using System.Globalization;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Wording;

/// <summary>A finding in words: what it is, with its figures, and what to do next.</summary>
public static class FindingSentences
{
    /// <summary>The finding's sentence and the next step.</summary>
    public static string Of(Finding finding, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(finding);
        object?[] arguments =
        [
            PlaceOf(finding, culture),
            Figures.Date(finding.Date, null, culture),
            Figures.Date(finding.ComparedWith, null, culture),
            Absolute(finding.ChangePercent, culture),
            Absolute(finding.DetectablePercent, culture),
            Absolute(100 * finding.Probability, culture),
            CountOf(finding, culture),
            Figures.Number(Math.Abs(finding.Length?.Value ?? 0), "0.0", culture) is var length
                ? Format(FigureTexts.Centimetres, culture, length)
                : null,
            LesionOf(finding, culture),
            finding.Persons.ElementAtOrDefault(0),
            finding.Persons.ElementAtOrDefault(1),
            Levels(finding.OtherLevels, culture),
        ];
        string sentence = Format(Text(finding.Kind + Variant(finding), culture), culture, arguments);
        bool comparesPlaces = finding.Kind is FindingKind.LigamentAreaRise or FindingKind.NewlyAbnormalLevel;
        return comparesPlaces && finding.Probability is not null
            ? sentence + Format(Text("LinkDoubt", culture), culture, arguments)
            : sentence;
    }

    private static string Variant(Finding finding) =>
        finding.Kind switch
        {
            FindingKind.LigamentAreaRise
            or FindingKind.NewlyAbnormalLevel
            or FindingKind.LargerThanOtherLimb when finding.MayBeMeasurementError => "_MayBeError",
            FindingKind.NewLesionLevel when finding.Severity == FindingSeverity.Red => "_Setback",
            FindingKind.UncertainLink => (finding.Probability, finding.OtherLevels.Count) switch
            {
                (null, 0) => "_First",
                (null, _) => "_FirstOthers",
                (_, 0) => string.Empty,
                _ => "_Others",
            },
            FindingKind.TapeShift => finding.Length?.Value < 0 ? "_Lower" : "_Higher",
            FindingKind.ProvisionalBaseline when finding.Count is null or 0 => "_SameDay",
            FindingKind.TooFewLevels when finding.Count is null or 0 => "_None",
            FindingKind.EchogenicityOnly => finding.Count < 0 ? "_Brighter" : "_Darker",
            _ => string.Empty,
        };

    private static string PlaceOf(Finding finding, CultureInfo? culture) =>
        (finding.Part, finding.Level) switch
        {
            (null, _) => string.Empty,
            ({ } part, null) => Names.AsTitle(Format(Text("Place_NoLevel", culture), culture, Names.Of(part, culture)), culture),
            ({ } part, { } level) => Names.AsTitle(
                Format(Text("Place", culture), culture, Names.Of(part, culture), Figures.Level(level, null, culture)),
                culture
            ),
        };

    private static string LesionOf(Finding finding, CultureInfo? culture) =>
        finding.Part is { } part
            ? Format(
                Text(finding.Lesion is null ? "Lesion_Unnamed" : "Lesion_Named", culture),
                culture,
                finding.Lesion,
                Names.Of(part, culture)
            )
            : string.Empty;

    private static string? CountOf(Finding finding, CultureInfo? culture) =>
        (finding.Kind, finding.Count) switch
        {
            (_, null) => null,
            (FindingKind.ProvisionalBaseline, { } days) => Figures.Days(days, null, culture),
            (FindingKind.TooFewLevels, 1) => Text("Levels_One", culture),
            (FindingKind.TooFewLevels, { } levels) => Format(Text("Levels_Many", culture), culture, levels),
            (_, 1) => Text("Examinations_One", culture),
            (_, { } examinations) => Format(Text("Examinations_Many", culture), culture, examinations),
        };

    private static string Levels(IReadOnlyList<Level> levels, CultureInfo? culture) =>
        levels
            .Select(level => Figures.Level(level, null, culture))
            .Aggregate(string.Empty, (soFar, next) => soFar.Length == 0 ? next : Format(Text("And", culture), culture, soFar, next));

    private static string Absolute(double? percent, CultureInfo? culture) =>
        Figures.Percent(percent is { } known ? new Percent(Math.Abs(known)) : null, null, culture);

    private static string Text(string key, CultureInfo? culture) =>
        Findings.ResourceManager.GetString(key, culture ?? TextCulture.Default)
        ?? throw new ArgumentOutOfRangeException(nameof(key), key, "Findings has no such text.");

    private static string Format(string text, CultureInfo? culture, params object?[] arguments) =>
        string.Format(culture ?? TextCulture.Default, text, arguments);
}
