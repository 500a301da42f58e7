using RehabTrack.Records.Horses;

namespace RehabTrack.Records.Shares;

/// <summary>A link that a person can be given, and the one that was given last.</summary>
public sealed record ShareLine
{
    /// <summary>For whom.</summary>
    public required Guid PersonId { get; init; }

    /// <summary>The person's name.</summary>
    public required string PersonName { get; init; }

    /// <summary>What the person is to the horse or horses.</summary>
    public required HorseRelation Relation { get; init; }

    /// <summary>The one horse; null for all the horses that a trainer trains in a yard.</summary>
    public required Guid? HorseId { get; init; }

    /// <summary>The yard of a trainer's link; null for horses that stand in none, and for the others'.</summary>
    public required Guid? YardId { get; init; }

    /// <summary>The yard's name; null without one.</summary>
    public required string? YardName { get; init; }

    /// <summary>The one report that a referring vet's link opens; null for the others'.</summary>
    public required Guid? ReportId { get; init; }

    /// <summary>The day on which that report was released; null without one.</summary>
    public required DateOnly? ReportDate { get; init; }

    /// <summary>Its name, or the names of all of them in order.</summary>
    public required IReadOnlyList<string> HorseNames { get; init; }

    /// <summary>The link that stands; null when none was made, or it was taken back.</summary>
    public required ShareLinkView? Link { get; init; }
}
