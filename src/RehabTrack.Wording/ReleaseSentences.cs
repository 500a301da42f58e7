using System.Globalization;
using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Wording;

/// <summary>The fixed sentences that owner and trainer read of a decision, for the vet to edit before they go out.</summary>
public static class ReleaseSentences
{
    /// <summary>For the owner: what was decided, how the injury is, when the horse is seen again.</summary>
    public static IReadOnlyList<string> ForOwner(ReleaseFacts facts, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return
        [
            Decided("Owner", facts, culture),
            .. facts.Injuries.Select(injury => Said($"Injury_{injury.Verdict}", culture, injury.Name)),
            .. OfTheDay("DayOwner", facts, culture),
            .. Recheck(facts, culture),
            Said("CautionOwner", culture),
        ];
    }

    /// <summary>For the trainer: what is to be done, and what never.</summary>
    public static IReadOnlyList<string> ForTrainer(ReleaseFacts facts, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return
        [
            Decided("Trainer", facts, culture),
            .. OfTheDay("DayTrainer", facts, culture),
            .. Recheck(facts, culture),
            Said("CautionTrainer", culture),
        ];
    }

    /// <summary>
    /// A sentence as it goes out: one that speaks of healing always ends with the reminder that this permits no more work.
    /// </summary>
    /// <param name="sentence">The sentence as typed.</param>
    /// <param name="culture">The language; null for the default.</param>
    public static string Finished(string sentence, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(sentence);
        string trimmed = sentence.Trim();
        string ending = Said("NoMoreWork", culture);
        return
            !trimmed.Contains(Said("HealingWord", culture), StringComparison.OrdinalIgnoreCase)
            || trimmed.EndsWith(ending, StringComparison.OrdinalIgnoreCase)
            ? trimmed
            : $"{trimmed} {ending}";
    }

    private static string Decided(string reader, ReleaseFacts facts, CultureInfo? culture) =>
        Said(
            facts is { Kind: DecisionKind.Pause, Until: not null } ? $"{reader}_Pause_Until" : $"{reader}_{facts.Kind}",
            culture,
            facts.Horse,
            Figures.Date(facts.From, null, culture),
            Figures.Date(facts.Until, null, culture)
        );

    // No minutes: they grow and drop by the day, and only the permit of the day knows them.
    private static string[] OfTheDay(string key, ReleaseFacts facts, CultureInfo? culture) =>
        facts.Kind is DecisionKind.Advance or DecisionKind.Hold or DecisionKind.StepBack ? [Said(key, culture, facts.Horse)] : [];

    private static string[] Recheck(ReleaseFacts facts, CultureInfo? culture) =>
        facts is { Recheck: { } date, Kind: not DecisionKind.Close } ? [Said("Recheck", culture, Figures.Date(date, null, culture))] : [];

    private static string Said(string key, CultureInfo? culture, params object?[] arguments) =>
        string.Format(
            culture ?? TextCulture.Default,
            ReleaseTexts.ResourceManager.GetString(key, culture ?? TextCulture.Default)
                ?? throw new ArgumentOutOfRangeException(nameof(key), key, "ReleaseTexts has no such text."),
            arguments
        );
}
