namespace RehabTrack.Records.Archive;

/// <summary>A horse that was put away.</summary>
public sealed record ArchivedHorse : ArchivedThing
{
    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>Its year of birth.</summary>
    public required int? BirthYear { get; init; }

    /// <summary>Its yard.</summary>
    public required string? Yard { get; init; }
}
