using RehabTrack.Rechecks.Care;

namespace RehabTrack.Records.Archive;

/// <summary>A treatment, medicine or sign that was put away.</summary>
public sealed record ArchivedCare : ArchivedThing
{
    /// <summary>The horse.</summary>
    public required Guid HorseId { get; init; }

    /// <summary>The horse's name.</summary>
    public required string Horse { get; init; }

    /// <summary>What it says.</summary>
    public required CareEntry Entry { get; init; }

    /// <summary>Why it was put away.</summary>
    public required string? Reason { get; init; }
}
