using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.People;

/// <summary>A person as it shall be.</summary>
public sealed record SavePersonInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>The person to change; null for a new one.</summary>
    public Guid? Id { get; init; }

    /// <summary>The version that was read; null for a new person.</summary>
    public Guid? Version { get; init; }

    /// <summary>Name.</summary>
    public required string Name { get; init; }

    /// <summary>Role.</summary>
    public required Role Role { get; init; }

    /// <summary>Telephone.</summary>
    public string? Phone { get; init; }

    /// <summary>Mail.</summary>
    public string? Mail { get; init; }

    /// <summary>Language, as "en".</summary>
    public string Language { get; init; } = "en";

    /// <summary>Whether the person may sign in here; else a contact only.</summary>
    public bool CanSignIn { get; init; }
}
