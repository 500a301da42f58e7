using RehabTrack.Rechecks.Anatomy;

namespace RehabTrack.Records.Archive;

/// <summary>A case that was put away.</summary>
public sealed record ArchivedCase : ArchivedThing
{
    /// <summary>The horse's name.</summary>
    public required string Horse { get; init; }

    /// <summary>Limb.</summary>
    public required Limb Limb { get; init; }

    /// <summary>Structure.</summary>
    public required Structure Structure { get; init; }

    /// <summary>Date of the injury; null when not known.</summary>
    public required DateOnly? Onset { get; init; }

    /// <summary>Examinations that it holds, drafts too.</summary>
    public required int Examinations { get; init; }
}
