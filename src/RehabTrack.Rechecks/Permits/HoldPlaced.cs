namespace RehabTrack.Rechecks.Permits;

/// <summary>Something upstream speaks against growth. Only a vet's later signature lifts it, or that its ground is gone.</summary>
public sealed record HoldPlaced : PermitEntry
{
    /// <summary>What it is.</summary>
    public required PermitHoldKind Kind { get; init; }

    /// <summary>The first day.</summary>
    public required DateOnly From { get; init; }

    /// <summary>
    /// The last day, when its ground is gone (a draft was corrected); null while it stands. Without meaning for a withdrawn vet, which
    /// only a signature ends.
    /// </summary>
    public DateOnly? Until { get; init; }
}
