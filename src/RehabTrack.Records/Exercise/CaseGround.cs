using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Suggestions;

namespace RehabTrack.Records.Exercise;

/// <summary>What an open case said when a decision was signed.</summary>
public sealed record CaseGround
{
    /// <summary>The case.</summary>
    public required Guid CaseId { get; init; }

    /// <summary>The engine that said it.</summary>
    public required string EngineVersion { get; init; }

    /// <summary>The date it spoke for.</summary>
    public required DateOnly AsOf { get; init; }

    /// <summary>The verdict.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The rate, % per 60 days; null when there is none.</summary>
    public double? RatePercentPer60Days { get; init; }

    /// <summary>What the rules suggested.</summary>
    public required SuggestedMove Suggested { get; init; }

    /// <summary>The rules that spoke, by precedence.</summary>
    public required IReadOnlyList<RuleCode> Rules { get; init; }

    /// <summary>The examinations that were read.</summary>
    public required IReadOnlyList<Guid> Examinations { get; init; }

    /// <summary>The hash of all that was read of them, with links and settings.</summary>
    public required string InputHash { get; init; }
}
