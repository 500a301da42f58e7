namespace RehabTrack.Records.Exercise;

/// <summary>What the mail about a concern is written from.</summary>
public sealed record ConcernLetter
{
    /// <summary>The horse's name.</summary>
    public required string HorseName { get; init; }

    /// <summary>The yard it stands in; null when not given.</summary>
    public required string? Yard { get; init; }

    /// <summary>The practice's name.</summary>
    public required string PracticeName { get; init; }

    /// <summary>The practice's time zone.</summary>
    public required string TimeZone { get; init; }

    /// <summary>The line that opened the concern.</summary>
    public required ExerciseLine Line { get; init; }

    /// <summary>Whom it is written to; only those with an address.</summary>
    public required IReadOnlyList<ConcernReader> Readers { get; init; }
}
