namespace RehabTrack.Records.Bookings;

/// <summary>A booked recheck.</summary>
public sealed record BookingView
{
    /// <summary>Identity; also the entry's in calendars.</summary>
    public required Guid Id { get; init; }

    /// <summary>Version token.</summary>
    public required Guid Version { get; init; }

    /// <summary>The day.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The practice's wall-clock time; null when only the day is booked.</summary>
    public required TimeOnly? Time { get; init; }

    /// <summary>How long it takes.</summary>
    public required int Minutes { get; init; }

    /// <summary>The vet who comes; null when not said.</summary>
    public required Guid? VetId { get; init; }

    /// <summary>That vet's name.</summary>
    public required string? Vet { get; init; }

    /// <summary>Where; null when not said.</summary>
    public required string? Place { get; init; }

    /// <summary>What helps to get there; null when not said.</summary>
    public required string? TravelNote { get; init; }

    /// <summary>Whether the day lies after the recheck is due.</summary>
    public required bool IsAfterDue { get; init; }

    /// <summary>What else is booked at that time for the same vet or at the same place.</summary>
    public required IReadOnlyList<ClashView> Clashes { get; init; }
}
