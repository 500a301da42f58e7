using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Wording;

/// <summary>What the released sentences of a decision are made of. Neither suggestion nor projection is among it.</summary>
public sealed record ReleaseFacts
{
    /// <summary>The horse.</summary>
    public required string Horse { get; init; }

    /// <summary>What was decided.</summary>
    public required DecisionKind Kind { get; init; }

    /// <summary>The first day.</summary>
    public required DateOnly From { get; init; }

    /// <summary>The last day of a pause; null when open.</summary>
    public DateOnly? Until { get; init; }

    /// <summary>When the horse is seen again; null when not said.</summary>
    public DateOnly? Recheck { get; init; }

    /// <summary>The open cases, as a reader calls them, with what is said of each.</summary>
    public IReadOnlyList<(string Name, Verdict Verdict)> Injuries { get; init; } = [];
}
