namespace RehabTrack.Records.History;

/// <summary>Which lines of the practice's trail.</summary>
public sealed record TrailFilter
{
    /// <summary>Only what this person did; null for all.</summary>
    public Guid? PersonId { get; init; }

    /// <summary>Only this kind of record; null for all.</summary>
    public string? Kind { get; init; }

    /// <summary>Only what concerns this case; null for all.</summary>
    public Guid? CaseId { get; init; }

    /// <summary>The first day, on the practice's calendar; null for no bound.</summary>
    public DateOnly? From { get; init; }

    /// <summary>The last day, on the practice's calendar; null for no bound.</summary>
    public DateOnly? To { get; init; }

    /// <summary>Only lines with a smaller number: the page after the one that ended there. Null for the latest.</summary>
    public long? Before { get; init; }
}
