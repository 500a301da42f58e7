using RehabTrack.Records.Rights;

namespace RehabTrack.Records.Archive;

/// <summary>A person who was put away.</summary>
public sealed record ArchivedPerson : ArchivedThing
{
    /// <summary>The name.</summary>
    public required string Name { get; init; }

    /// <summary>The role.</summary>
    public required Role Role { get; init; }

    /// <summary>Whether the person may sign in again once they are back.</summary>
    public required bool CanSignIn { get; init; }
}
