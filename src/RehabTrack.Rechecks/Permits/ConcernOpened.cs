namespace RehabTrack.Rechecks.Permits;

/// <summary>Somebody reported heat, swelling, pain or lameness. The floor holds until a vet signs.</summary>
public sealed record ConcernOpened : PermitEntry
{
    /// <summary>The day it speaks of. It counts from then, or from the day it was recorded when that is earlier.</summary>
    public required DateOnly Date { get; init; }
}
