namespace RehabTrack.Rechecks.Permits;

/// <summary>
/// The ground of a hold is gone: the draft that showed a setback was corrected or put away. Holds of the kind that were recorded before
/// it hold no more from its day on. Without meaning for a withdrawn vet and an overdue recheck, which only a signature ends.
/// </summary>
public sealed record HoldEnded : PermitEntry
{
    /// <summary>Which holds.</summary>
    public required PermitHoldKind Kind { get; init; }

    /// <summary>The first day without them.</summary>
    public required DateOnly From { get; init; }
}
