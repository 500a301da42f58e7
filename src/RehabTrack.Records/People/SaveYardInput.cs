using RehabTrack.Records.Room;

namespace RehabTrack.Records.People;

/// <summary>A yard as it shall be.</summary>
public sealed record SaveYardInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>The yard to change; null for a new one.</summary>
    public Guid? Id { get; init; }

    /// <summary>The version that was read; null for a new yard.</summary>
    public Guid? Version { get; init; }

    /// <summary>Name.</summary>
    public required string Name { get; init; }

    /// <summary>Telephone.</summary>
    public string? Phone { get; init; }

    /// <summary>Address.</summary>
    public string? Address { get; init; }
}
