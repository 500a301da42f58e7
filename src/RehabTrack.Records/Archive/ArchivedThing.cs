namespace RehabTrack.Records.Archive;

/// <summary>Something that was put away, with who did it and when.</summary>
public abstract record ArchivedThing
{
    /// <summary>Identity.</summary>
    public required Guid Id { get; init; }

    /// <summary>Version token.</summary>
    public required Guid Version { get; init; }

    /// <summary>When it was put away (UTC).</summary>
    public required DateTime At { get; init; }

    /// <summary>Who put it away; null where the trail does not tell.</summary>
    public string? By { get; init; }

    /// <summary>What is to be brought back first, since this belongs to it; null when nothing is.</summary>
    public ArchivedKind? After { get; init; }
}
