namespace RehabTrack.Rechecks.Suggestions;

/// <summary>Tells the rules that a gate names as met, not met or not known. They pass nothing by themselves.</summary>
public static class GateRules
{
    /// <summary>The step up that a rule speaks of; more of the same for a rule that speaks of none.</summary>
    /// <param name="rule">The rule.</param>
    public static AskedStep AskedOf(RuleCode rule) =>
        rule == RuleCode.AdvanceToTrot ? AskedStep.Trot
        : rule == RuleCode.AdvanceToCanter ? AskedStep.CanterOrGallop
        : AskedStep.More;

    /// <summary>What one case answers: met when the rule speaks; otherwise not known where all that is lacking was not examined or recorded.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="said">What the rules say of the case, asked for <see cref="AskedOf"/> the rule.</param>
    /// <param name="settings">The practice's settings: a rule that is switched off cannot answer.</param>
    public static RuleAnswer Of(RuleCode rule, Suggestion said, RuleSettings settings)
    {
        ArgumentNullException.ThrowIfNull(said);
        ArgumentNullException.ThrowIfNull(settings);
        return said.Hits.Any(hit => hit.Rule.Code == rule) ? RuleAnswer.Met
            : !settings.IsOn(RuleTable.Of(rule)) ? RuleAnswer.NotKnown
            : said.Hits.Any(hit => SpeaksAgainst(hit.Rule.Code)) || said.Unmet.Any(condition => IsKnown(condition, said))
                ? RuleAnswer.NotMet
            : RuleAnswer.NotKnown;
    }

    /// <summary>The answer over all open cases: one that is not met outranks one that is not known. Not known without a case.</summary>
    /// <param name="answers">One a case.</param>
    public static RuleAnswer Over(IEnumerable<RuleAnswer> answers) => answers.DefaultIfEmpty(RuleAnswer.NotKnown).Max();

    private static bool SpeaksAgainst(RuleCode code) =>
        code switch
        {
            RuleCode.LesionLevelNotRead
            or RuleCode.LesionLinkUncertain
            or RuleCode.NotYetReadable
            or RuleCode.SoundnessMasked
            or RuleCode.SoundnessNotRecorded
            or RuleCode.EvidenceMissing => false,
            RuleCode.Advance or RuleCode.AdvanceToTrot or RuleCode.AdvanceToCanter => false,
            RuleCode.SignsPresent
            or RuleCode.LigamentAreaRed
            or RuleCode.NewOrNewlyAbnormalLevel
            or RuleCode.Worsening
            or RuleCode.LigamentAreaAmber
            or RuleCode.PainBackWithWork
            or RuleCode.NoProgress
            or RuleCode.NotSound => true,
        };

    // A horse known to be lame is told by a rule of its own; without it, soundness is what is not known.
    private static bool IsKnown(AdvanceCondition condition, Suggestion said) =>
        condition switch
        {
            AdvanceCondition.LesionFallen => said.Evidence?.Lesion is not null,
            AdvanceCondition.LigamentFallen => said.Evidence?.Ligament is not null,
            AdvanceCondition.LesionStable => said.Evidence?.LesionAtMostPercent is not null,
            AdvanceCondition.LigamentStable => said.Evidence?.LigamentAtMostPercent is not null,
            AdvanceCondition.Brighter => said.Evidence?.Echogenicity is not null,
            AdvanceCondition.BetterAligned => said.Evidence?.FibreAlignment is not null,
            AdvanceCondition.Sound or AdvanceCondition.SoundAtTrotInHand => false,
            AdvanceCondition.LongEnough => said.TrotFrom is not null,
            AdvanceCondition.EchogenicityNearNormal => said.Evidence?.EchogenicityNow is { Scale.Lowest: 0 },
            AdvanceCondition.FibreAlignmentNearNormal => said.Evidence?.FibreAlignmentNow is { Scale.Lowest: 0 },
        };
}
