namespace RehabTrack.Records.Archive;

/// <summary>A page of what was put away.</summary>
public sealed record ArchivedPage
{
    /// <summary>What was put away last, first.</summary>
    public required IReadOnlyList<ArchivedThing> Things { get; init; }

    /// <summary>How many there are of each kind; of the one that was asked for alone where only that was to be counted.</summary>
    public required IReadOnlyDictionary<ArchivedKind, int> Counts { get; init; }

    /// <summary>The page, from 1.</summary>
    public required int Page { get; init; }

    /// <summary>How many pages there are.</summary>
    public required int Pages { get; init; }

    /// <summary>The horse that was asked for; null when none was, or it is not there.</summary>
    public required string? Horse { get; init; }

    /// <summary>The practice's time zone.</summary>
    public required string TimeZone { get; init; }
}
