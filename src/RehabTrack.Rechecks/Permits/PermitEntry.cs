namespace RehabTrack.Rechecks.Permits;

/// <summary>
/// One thing that happened in the exercise of a horse, as it was recorded. It carries the day it speaks of and, in
/// <see cref="RecordedOn"/> and <see cref="Order"/>, when it came to be known: an entry that comes late may lower, it never raises.
/// </summary>
public abstract record PermitEntry
{
    /// <summary>Its place in the sequence of recording, unique within a horse: what was recorded later has a higher number.</summary>
    public required long Order { get; init; }

    /// <summary>The practice's calendar date on which it was recorded.</summary>
    public required DateOnly RecordedOn { get; init; }

    /// <summary>Whether it came with an import. What was imported grants nothing; concerns, signs and holds still lower.</summary>
    public bool IsImported { get; init; }
}
