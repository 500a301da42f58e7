using RehabTrack.Rechecks.Schedule;
using RehabTrack.Records.Horses;

namespace RehabTrack.Records.Reminders;

/// <summary>What a reminder of a recheck is written from. It holds no diagnosis, no verdict and nothing that is permitted.</summary>
public sealed record ReminderLetter
{
    /// <summary>The case.</summary>
    public required Guid CaseId { get; init; }

    /// <summary>The horse.</summary>
    public required string HorseName { get; init; }

    /// <summary>The practice.</summary>
    public required string PracticeName { get; init; }

    /// <summary>The practice's telephone; null when not given.</summary>
    public required string? PracticePhone { get; init; }

    /// <summary>The practice's time zone.</summary>
    public required string TimeZone { get; init; }

    /// <summary>The last examination signed here; null when there is none.</summary>
    public required DateOnly? LastSigned { get; init; }

    /// <summary>When the recheck is due.</summary>
    public required RecheckDue Due { get; init; }

    /// <summary>The booked day; null when none is booked.</summary>
    public required DateOnly? BookedOn { get; init; }

    /// <summary>The booked time; null when only the day is booked.</summary>
    public required TimeOnly? BookedAt { get; init; }

    /// <summary>The booked place; null when not said.</summary>
    public required string? Place { get; init; }

    /// <summary>The travel note; null when there is none.</summary>
    public required string? TravelNote { get; init; }

    /// <summary>Trainer first, then owner.</summary>
    public required IReadOnlyList<HorsePersonView> Readers { get; init; }

    /// <summary>Reminders by mail since the last examination, latest first.</summary>
    public required IReadOnlyList<ReminderView> Mailed { get; init; }
}
