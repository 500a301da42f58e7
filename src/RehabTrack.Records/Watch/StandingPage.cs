namespace RehabTrack.Records.Watch;

/// <summary>A page of the list of what needs a person.</summary>
public sealed record StandingPage
{
    /// <summary>The practice's date.</summary>
    public required DateOnly Today { get; init; }

    /// <summary>The page, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>How many pages there are, at least 1.</summary>
    public required int Count { get; init; }

    /// <summary>The horses of the page, most severe first, then what has stood longest; each with what nobody has acknowledged.</summary>
    public required IReadOnlyList<StandingRow> Rows { get; init; }

    /// <summary>How many horses there are in all.</summary>
    public required int HorseCount { get; init; }

    /// <summary>What was acknowledged and stands still; of at most fifty horses.</summary>
    public required IReadOnlyList<StandingRow> Acknowledged { get; init; }

    /// <summary>How much was acknowledged and stands still, in all.</summary>
    public required int AcknowledgedCount { get; init; }
}
