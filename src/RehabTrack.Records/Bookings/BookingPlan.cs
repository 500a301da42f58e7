namespace RehabTrack.Records.Bookings;

/// <summary>When, where and by whom a recheck shall be.</summary>
public sealed record BookingPlan
{
    /// <summary>The day, a calendar date of the practice.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The practice's wall-clock time; null when only the day is booked.</summary>
    public TimeOnly? Time { get; init; }

    /// <summary>How long it takes; null takes the usual.</summary>
    public int? Minutes { get; init; }

    /// <summary>The vet who comes; null when not said.</summary>
    public Guid? VetId { get; init; }

    /// <summary>Where; null when not said.</summary>
    public string? Place { get; init; }

    /// <summary>What helps to get there or to get the horse there.</summary>
    public string? TravelNote { get; init; }
}
