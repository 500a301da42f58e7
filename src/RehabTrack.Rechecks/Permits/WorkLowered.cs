using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Rechecks.Permits;

/// <summary>Somebody, vet or not, lowered the work for a time. In that time effective time does not run, whether or not it bites.</summary>
public sealed record WorkLowered : PermitEntry
{
    /// <summary>The most that may be done in that time.</summary>
    public required Work AtMost { get; init; }

    /// <summary>The first day.</summary>
    public required DateOnly From { get; init; }

    /// <summary>The last day; null for no end given.</summary>
    public DateOnly? Until { get; init; }
}
