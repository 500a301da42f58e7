using RehabTrack.Records.Rights;

namespace RehabTrack.Records.People;

/// <summary>A person.</summary>
public sealed record PersonView
{
    /// <summary>Identity.</summary>
    public required Guid Id { get; init; }

    /// <summary>Version token.</summary>
    public required Guid Version { get; init; }

    /// <summary>Name.</summary>
    public required string Name { get; init; }

    /// <summary>Role.</summary>
    public required Role Role { get; init; }

    /// <summary>Telephone; null when not given.</summary>
    public required string? Phone { get; init; }

    /// <summary>Mail; null when not given.</summary>
    public required string? Mail { get; init; }

    /// <summary>Language, as "en".</summary>
    public required string Language { get; init; }

    /// <summary>Whether the person may sign in here.</summary>
    public required bool CanSignIn { get; init; }

    /// <summary>Whether the person was put away.</summary>
    public required bool Archived { get; init; }

    /// <summary>The horses the person stands beside today.</summary>
    public required IReadOnlyList<PersonHorse> Horses { get; init; }
}
