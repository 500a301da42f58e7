using System.Globalization;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Suggestions;

namespace RehabTrack.Wording;

/// <summary>What the rules suggest, in words for a vet.</summary>
public static class SuggestionSentences
{
    /// <summary>What is suggested, in a word or two.</summary>
    public static string Headline(Suggestion suggestion, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(suggestion);
        return Of(suggestion.Move, suggestion.Asked, culture);
    }

    /// <summary>A move in a word or two.</summary>
    public static string Of(SuggestedMove move, AskedStep asked, CultureInfo? culture = null) =>
        Said($"Move_{move}", culture, Of(asked, culture));

    /// <summary>A step up, as "trot".</summary>
    public static string Of(AskedStep asked, CultureInfo? culture = null) => Said($"Asked_{asked}", culture);

    /// <summary>A rule in a sentence.</summary>
    public static string Of(Rule rule, RuleSettings rules, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(rules);
        int days = rule.Code == RuleCode.SoundnessMasked ? rules.ShockWaveDays : rules.TrotAfterDays;
        return Said($"Rule_{rule.Code}", culture, Figures.Days(days, null, culture), rules.CanterHighestGrade);
    }

    /// <summary>Why a rule speaks: the rule, and the finding with its figures and their error.</summary>
    public static string Of(RuleHit hit, RuleSettings rules, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(hit);
        string rule = Of(hit.Rule, rules, culture);
        return hit.Finding is { } finding ? $"{rule} {FindingSentences.Of(finding, culture)}" : rule;
    }

    /// <summary>What a step up needs, with the figures that show it or leave it open.</summary>
    public static string Of(AdvanceCondition condition, bool isMet, Suggestion suggestion, RuleSettings rules, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(suggestion);
        ArgumentNullException.ThrowIfNull(rules);
        LevelEvidence? evidence = suggestion.Evidence;
        SizeChange? size =
            condition is AdvanceCondition.LesionFallen or AdvanceCondition.LesionStable ? evidence?.Lesion
            : condition is AdvanceCondition.LigamentFallen or AdvanceCondition.LigamentStable ? evidence?.Ligament
            : null;
        double? atMost = condition == AdvanceCondition.LesionStable ? evidence?.LesionAtMostPercent : evidence?.LigamentAtMostPercent;
        bool isFibre = condition is AdvanceCondition.BetterAligned or AdvanceCondition.FibreAlignmentNearNormal;
        (Grade Before, Grade Now)? grades = isFibre ? evidence?.FibreAlignment : evidence?.Echogenicity;
        Grade? now = isFibre ? evidence?.FibreAlignmentNow : evidence?.EchogenicityNow;
        string variant = condition switch
        {
            AdvanceCondition.LesionFallen when !(size is { } lesion && lesion.Now < lesion.DetectableBelow) => "_AtTarget",
            AdvanceCondition.LesionStable or AdvanceCondition.LigamentStable when atMost is null => "_NotRead",
            AdvanceCondition.LesionStable or AdvanceCondition.LigamentStable when isMet && atMost <= 0 => "_Less",
            AdvanceCondition.Brighter or AdvanceCondition.BetterAligned when grades is null => "_NotRead",
            AdvanceCondition.EchogenicityNearNormal or AdvanceCondition.FibreAlignmentNearNormal when now is not { Scale.Lowest: 0 } =>
                "_NotRead",
            AdvanceCondition.LongEnough when suggestion.TrotFrom is null => "_NoStart",
            _ => "",
        };
        return Said(
            $"{(isMet ? "Met" : "Unmet")}_{condition}{variant}",
            culture,
            evidence is null ? null : Place(evidence, culture),
            Figures.Date(evidence?.From, null, culture),
            Absolute(size?.ChangePercent, culture),
            Absolute(size?.DetectablePercent, culture),
            Absolute(Math.Max(0, atMost ?? 0), culture),
            Figures.SignedPercent(size?.ChangePercent, null, culture),
            Figures.GradeNumber(grades?.Before, null, culture),
            Figures.GradeNumber(now, null, culture),
            Figures.Date(suggestion.TrotFrom, null, culture),
            rules.CanterHighestGrade
        );
    }

    private static string Place(LevelEvidence evidence, CultureInfo? culture) =>
        Names.AsTitle(
            string.Format(
                culture ?? TextCulture.Default,
                Findings.Place,
                Names.Of(evidence.Part, culture),
                Figures.Level(evidence.Level, null, culture)
            ),
            culture
        );

    private static string Absolute(double? percent, CultureInfo? culture) =>
        Figures.Percent(percent is { } known ? new Percent(Math.Abs(known)) : null, null, culture);

    private static string Said(string key, CultureInfo? culture, params object?[] arguments) =>
        string.Format(
            culture ?? TextCulture.Default,
            SuggestionTexts.ResourceManager.GetString(key, culture ?? TextCulture.Default)
                ?? throw new ArgumentOutOfRangeException(nameof(key), key, "There is no such text."),
            arguments
        );
}
