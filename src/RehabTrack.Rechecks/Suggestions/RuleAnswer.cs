namespace RehabTrack.Rechecks.Suggestions;

/// <summary>Whether a rule that a gate asks for suggests the step up, in rising weight over several cases.</summary>
public enum RuleAnswer
{
    /// <summary>It suggests the step up.</summary>
    Met,

    /// <summary>It cannot be told: something was not examined, not recorded or not linked for sure, or the rule is switched off.</summary>
    NotKnown,

    /// <summary>What is known speaks against it.</summary>
    NotMet,
}
