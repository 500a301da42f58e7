using RehabTrack.Rechecks.Repeats;

namespace RehabTrack.Records.Archive;

/// <summary>Repeat tracings of one subject that were put away together.</summary>
public sealed record ArchivedRepeats : ArchivedThing
{
    /// <summary>The tracings' ids.</summary>
    public required IReadOnlyList<Guid> Ids { get; init; }

    /// <summary>The tracings.</summary>
    public required IReadOnlyList<RepeatTracing> Tracings { get; init; }
}
