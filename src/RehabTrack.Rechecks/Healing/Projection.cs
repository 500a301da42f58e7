namespace RehabTrack.Rechecks.Healing;

/// <summary>
/// When a healing lesion may reach its target, if it goes on as it went. For a vet only, and no promise: nothing is known of the work that
/// will be done. A date that lies beyond <see cref="Limit"/> is null, since the examinations carry no further; an interval whose end is null
/// begins later for it, so that the days from its begin on hold the share it is named after.
/// </summary>
public sealed record Projection
{
    /// <summary>The target, in the unit of the measure.</summary>
    public required double Target { get; init; }

    /// <summary>Reached before this day as likely as after it.</summary>
    public required DateOnly? Median { get; init; }

    /// <summary>Begin of the 50 % interval.</summary>
    public required DateOnly? Lower50 { get; init; }

    /// <summary>End of the 50 % interval.</summary>
    public required DateOnly? Upper50 { get; init; }

    /// <summary>Begin of the 90 % interval.</summary>
    public required DateOnly? Lower90 { get; init; }

    /// <summary>End of the 90 % interval.</summary>
    public required DateOnly? Upper90 { get; init; }

    /// <summary>The last day that is projected.</summary>
    public required DateOnly Limit { get; init; }

    /// <summary>The probability that the target is reached by <see cref="Limit"/>, 0 to 1.</summary>
    public required double ReachedByLimit { get; init; }

    /// <summary>The probability that the target is reached by the next recheck at the usual interval, 0 to 1.</summary>
    public required double ReachedByNext { get; init; }

    /// <summary>The day of the next recheck at the usual interval.</summary>
    public required DateOnly Next { get; init; }
}
