namespace RehabTrack.Rechecks.Permits;

/// <summary>What holds the work where it is, as told by the stages before.</summary>
public enum PermitHoldKind
{
    /// <summary>Worsening, or a new or newly abnormal level: growth stops.</summary>
    Setback,

    /// <summary>An examination that nobody signed yet shows a setback: growth stops.</summary>
    UnsignedSetback,

    /// <summary>What the last decision rested on was changed: growth stops.</summary>
    BasisChanged,

    /// <summary>The responsible vet withdrew: nothing is permitted until another signs.</summary>
    VetWithdrawn,
}
