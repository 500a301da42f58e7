namespace RehabTrack.Reports.Calendar;

/// <summary>A booked recheck, as far as a calendar may know it: no diagnosis, no owner, no trainer.</summary>
public sealed record CalendarEntry
{
    /// <summary>Names the entry through every move and cancellation.</summary>
    public required Guid Id { get; init; }

    /// <summary>How often it was moved or cancelled.</summary>
    public required int Sequence { get; init; }

    /// <summary>The horse's name.</summary>
    public required string HorseName { get; init; }

    /// <summary>The day; counts where <see cref="Begins"/> is null.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>When it begins, UTC; null when only the day is booked.</summary>
    public DateTime? Begins { get; init; }

    /// <summary>How long it takes, in minutes.</summary>
    public required int Minutes { get; init; }

    /// <summary>Where; null when not said.</summary>
    public string? Place { get; init; }

    /// <summary>What helps to get there; null when not said.</summary>
    public string? TravelNote { get; init; }

    /// <summary>Who comes; null when not said.</summary>
    public string? Vet { get; init; }

    /// <summary>Whether it will not take place.</summary>
    public required bool IsCancelled { get; init; }

    /// <summary>When it was booked, UTC.</summary>
    public required DateTime BookedAt { get; init; }

    /// <summary>When it was last changed, UTC.</summary>
    public required DateTime ChangedAt { get; init; }
}
