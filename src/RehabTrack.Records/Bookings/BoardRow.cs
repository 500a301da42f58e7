using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Schedule;
using RehabTrack.Records.Horses;

namespace RehabTrack.Records.Bookings;

/// <summary>A case on the board.</summary>
public sealed record BoardRow
{
    /// <summary>The case.</summary>
    public required Guid CaseId { get; init; }

    /// <summary>Its version token.</summary>
    public required Guid CaseVersion { get; init; }

    /// <summary>The horse.</summary>
    public required Guid HorseId { get; init; }

    /// <summary>Its name.</summary>
    public required string HorseName { get; init; }

    /// <summary>The yard it stands in; null when not given.</summary>
    public required string? Yard { get; init; }

    /// <summary>The yard's telephone; null when not given.</summary>
    public required string? YardPhone { get; init; }

    /// <summary>The yard's address; null when not given.</summary>
    public required string? YardAddress { get; init; }

    /// <summary>Limb.</summary>
    public required Limb Limb { get; init; }

    /// <summary>Structure.</summary>
    public required Structure Structure { get; init; }

    /// <summary>The last examination signed here; null when none was.</summary>
    public required DateOnly? LastSigned { get; init; }

    /// <summary>When the next recheck is due.</summary>
    public required RecheckDue Due { get; init; }

    /// <summary>Where the case stands today.</summary>
    public required RecheckStanding Standing { get; init; }

    /// <summary>Days between rechecks that count for this case.</summary>
    public required int IntervalDays { get; init; }

    /// <summary>The case's own interval; null when it has none.</summary>
    public required int? OwnIntervalDays { get; init; }

    /// <summary>The interval signed with the step of the plan; null when it names none.</summary>
    public required int? StepIntervalDays { get; init; }

    /// <summary>What is booked for the next recheck; null when nothing is.</summary>
    public required BookingView? Booking { get; init; }

    /// <summary>Who to ring: trainer first, then owner, each with what is known of telephone and mail.</summary>
    public required IReadOnlyList<HorsePersonView> ToRing { get; init; }

    /// <summary>The last note of a call since the last examination; null when there is none.</summary>
    public required CallView? LastCall { get; init; }

    /// <summary>The responsible vet; null when not said.</summary>
    public required Guid? ResponsibleVetId { get; init; }

    /// <summary>That vet's name.</summary>
    public required string? ResponsibleVet { get; init; }

    /// <summary>Who stands in for that vet today; null when nobody has to.</summary>
    public required string? CoveringVet { get; init; }
}
