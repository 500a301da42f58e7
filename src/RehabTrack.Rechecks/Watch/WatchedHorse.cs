using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;

namespace RehabTrack.Rechecks.Watch;

/// <summary>A horse as it is watched: its open cases, and what happened in its exercise.</summary>
public sealed record WatchedHorse
{
    /// <summary>Its open cases.</summary>
    public required IReadOnlyList<WatchedCase> Cases { get; init; }

    /// <summary>What happened in its exercise; empty where nothing did.</summary>
    public PermitHistory History { get; init; } = PermitHistory.Empty;

    /// <summary>By day what the page showed when the day was logged, for <see cref="AdherenceReader.Permitted"/>.</summary>
    public IReadOnlyList<KeyValuePair<DateOnly, Work>> Shown { get; init; } = [];
}
