using RehabTrack.Rechecks.Care;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Care;

/// <summary>A treatment, medicine or sign to keep or to correct.</summary>
public sealed record SaveCareInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>The horse.</summary>
    public required Guid HorseId { get; init; }

    /// <summary>The entry that is corrected; null for a new one.</summary>
    public Guid? Id { get; init; }

    /// <summary>The version that was read; null for a new one.</summary>
    public Guid? Version { get; init; }

    /// <summary>What it says.</summary>
    public required CareEntry Entry { get; init; }
}
