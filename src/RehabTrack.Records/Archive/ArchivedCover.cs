namespace RehabTrack.Records.Archive;

/// <summary>Cover that was taken back.</summary>
public sealed record ArchivedCover : ArchivedThing
{
    /// <summary>The vet who is away.</summary>
    public required string Vet { get; init; }

    /// <summary>The vet who would stand in.</summary>
    public required string CoveringVet { get; init; }

    /// <summary>First day.</summary>
    public required DateOnly From { get; init; }

    /// <summary>Last day.</summary>
    public required DateOnly To { get; init; }
}
