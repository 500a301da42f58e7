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

    /// <summary>The one horse; null for all the horses that a trainer trains.</summary>
    public required Guid? HorseId { get; init; }

    /// <summary>Its name, or the names of all of them in order.</summary>
    public required IReadOnlyList<string> HorseNames { get; init; }

    /// <summary>The link that stands; null when none was made, or it was taken back.</summary>
    public required ShareLinkView? Link { get; init; }
}
