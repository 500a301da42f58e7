using RehabTrack.Records.Covers;

namespace RehabTrack.Records.Bookings;

/// <summary>The practice's rechecks.</summary>
public sealed record BoardView
{
    /// <summary>The practice's name.</summary>
    public required string PracticeName { get; init; }

    /// <summary>The practice's telephone; null when not given.</summary>
    public required string? PracticePhone { get; init; }

    /// <summary>The practice's date.</summary>
    public required DateOnly Today { get; init; }

    /// <summary>The practice's time zone.</summary>
    public required string TimeZone { get; init; }

    /// <summary>The practice's interval in days, for cases without one of their own.</summary>
    public required int IntervalDays { get; init; }

    /// <summary>Minutes a recheck takes when nothing else is said.</summary>
    public required int VisitMinutes { get; init; }

    /// <summary>Open cases with something to be done, booked or done lately: most urgent first, then longest due.</summary>
    public required IReadOnlyList<BoardRow> Rows { get; init; }

    /// <summary>The vets who can be booked.</summary>
    public required IReadOnlyList<BoardVet> Vets { get; init; }

    /// <summary>Cover of today and of days to come.</summary>
    public required IReadOnlyList<CoverView> Covers { get; init; }
}
