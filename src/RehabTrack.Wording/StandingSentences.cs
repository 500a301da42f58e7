using System.Globalization;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Watch;

namespace RehabTrack.Wording;

/// <summary>What stands in words: what it is, since when, with its figures, and what to do next.</summary>
public static class StandingSentences
{
    /// <summary>The few words of its mark.</summary>
    public static string Title(StandingFinding finding, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding.OfCase is { } said ? Names.Of(said.Kind, culture) : Title(finding.Kind, culture);
    }

    /// <summary>The few words for what the exercise of a horse, or its rechecks, say; an analysis has words of its own.</summary>
    public static string Title(StandingKind kind, CultureInfo? culture = null) => Text($"Title_{kind}", culture);

    /// <summary>The sentence and the next step.</summary>
    public static string Of(StandingFinding finding, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(finding);
        if (finding.OfCase is { } said)
        {
            string sentence = FindingSentences.Of(said, culture);
            return finding is { Step: { } step, Week: { } week }
                ? $"{sentence} {Format(WatchTexts.InStep, culture, step, week)}"
                : sentence;
        }

        return Format(
            Text(finding.Kind + Variant(finding), culture),
            culture,
            Figures.Date(finding.Since, null, culture),
            Figures.Days(finding.Days, null, culture),
            finding.Minutes,
            Figures.Date(finding.Until, null, culture),
            finding.Step,
            string.Join(", ", finding.Over.Select(kind => Names.Of(kind, culture))),
            finding.Count
        );
    }

    /// <summary>Since when it stands, for what does not say so itself; null where it does.</summary>
    public static string? Since(StandingFinding finding, DateOnly today, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding.OfCase is null ? null
            : finding.Since >= today ? WatchTexts.SinceToday
            : Format(
                IsTrend(finding.OfCase.Kind) ? WatchTexts.ForDays : WatchTexts.Since,
                culture,
                Figures.Date(finding.Since, null, culture),
                Figures.Days(today.DayNumber - finding.Since.DayNumber, null, culture)
            );
    }

    /// <summary>The word of the way to the next step.</summary>
    public static string Of(StandingStep next, CultureInfo? culture = null) => Text($"Next_{next}", culture);

    // Its own sentence names the day.
    private static bool IsTrend(FindingKind kind) => kind is FindingKind.NoProgress or FindingKind.HealingSlowly or FindingKind.Worsening;

    private static string Variant(StandingFinding finding) =>
        finding.Kind switch
        {
            StandingKind.ConcernOpen => (finding.Next == StandingStep.Decide ? string.Empty : "_NoLine")
                + (finding.Count == 1 ? "_One" : "_Many"),
            StandingKind.GateNotExamined when finding.Severity == FindingSeverity.Red => "_Over",
            StandingKind.OverExercise => (finding.Minutes > 0 ? string.Empty : "_Ways") + (finding.Days == 1 ? "_One" : "_Many"),
            _ => string.Empty,
        };

    private static string Text(string key, CultureInfo? culture) =>
        WatchTexts.ResourceManager.GetString(key, culture ?? TextCulture.Default)
        ?? throw new ArgumentOutOfRangeException(nameof(key), key, "WatchTexts has no such text.");

    private static string Format(string text, CultureInfo? culture, params object?[] arguments) =>
        string.Format(culture ?? TextCulture.Default, text, arguments);
}
