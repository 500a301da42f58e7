using RehabTrack.Rechecks.Findings;

namespace RehabTrack.Rechecks.Suggestions;

/// <summary>What the rules suggest to the vet for a visit. A suggestion: the vet decides.</summary>
public sealed record Suggestion
{
    /// <summary>The move of the rule that outranks the others.</summary>
    public required SuggestedMove Move { get; init; }

    /// <summary>How much that rule asks of a person.</summary>
    public required FindingSeverity Severity { get; init; }

    /// <summary>The step up that was asked about.</summary>
    public required AskedStep Asked { get; init; }

    /// <summary>All rules that speak, by precedence; the first one decides. Never empty.</summary>
    public required IReadOnlyList<RuleHit> Hits { get; init; }

    /// <summary>What the asked step needs and has.</summary>
    public required IReadOnlyList<AdvanceCondition> Met { get; init; }

    /// <summary>What the asked step needs and lacks.</summary>
    public required IReadOnlyList<AdvanceCondition> Unmet { get; init; }

    /// <summary>The worst level at two dates; null when no lesion level was read at both.</summary>
    public required LevelEvidence? Evidence { get; init; }

    /// <summary>The day from which the time for trot is long enough; null when no start is known.</summary>
    public required DateOnly? TrotFrom { get; init; }
}
