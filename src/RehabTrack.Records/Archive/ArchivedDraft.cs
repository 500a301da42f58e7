using RehabTrack.Rechecks.Anatomy;

namespace RehabTrack.Records.Archive;

/// <summary>A draft of an examination that was put away.</summary>
public sealed record ArchivedDraft : ArchivedThing
{
    /// <summary>The horse's name.</summary>
    public required string Horse { get; init; }

    /// <summary>Limb of the case.</summary>
    public required Limb Limb { get; init; }

    /// <summary>Structure of the case.</summary>
    public required Structure Structure { get; init; }

    /// <summary>The day of the examination.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Who began it.</summary>
    public required string? EnteredBy { get; init; }

    /// <summary>Readings that were begun.</summary>
    public required int Readings { get; init; }
}
