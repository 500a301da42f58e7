using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Rechecks.Permits;

/// <summary>A vet signed a decision.</summary>
public sealed record DecisionSigned : PermitEntry
{
    /// <summary>What was decided.</summary>
    public required Decision Decision { get; init; }
}
