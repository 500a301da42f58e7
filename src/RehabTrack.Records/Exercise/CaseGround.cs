using RehabTrack.Rechecks.Analysis;
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

    /// <summary>
    /// The figures with the words on links and the settings they rest on; null in decisions of before they were kept.
    /// </summary>
    public SeenFigures? Figures { get; init; }

    /// <summary>The rules that spoke with the figures they spoke of, by precedence; empty in decisions of before they were kept.</summary>
    public IReadOnlyList<RuleHit> Hits { get; init; } = [];
}
