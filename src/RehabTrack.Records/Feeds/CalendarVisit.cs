namespace RehabTrack.Records.Feeds;

/// <summary>A booked recheck as a calendar may know it: no diagnosis, no owner, no trainer.</summary>
public sealed record CalendarVisit
{
    /// <summary>The booking; it stays the same through moves and cancellation.</summary>
    public required Guid BookingId { get; init; }

    /// <summary>How often it was moved or cancelled.</summary>
    public required int Sequence { get; init; }

    /// <summary>The horse's name.</summary>
    public required string HorseName { get; init; }

    /// <summary>The day, a calendar date of the practice.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>When it begins, UTC; null when only the day is booked.</summary>
    public required DateTime? Begins { get; init; }

    /// <summary>How long it takes.</summary>
    public required int Minutes { get; init; }

    /// <summary>Where; null when not said.</summary>
    public required string? Place { get; init; }

    /// <summary>What helps to get there; null when not said.</summary>
    public required string? TravelNote { get; init; }

    /// <summary>Who comes; null when not said.</summary>
    public required string? Vet { get; init; }

    /// <summary>Whether it was cancelled, or its case closed or put away.</summary>
    public required bool IsCancelled { get; init; }

    /// <summary>When it was booked, UTC.</summary>
    public required DateTime BookedAt { get; init; }

    /// <summary>When it was last changed, UTC.</summary>
    public required DateTime ChangedAt { get; init; }
}
