using RehabTrack.Rechecks.Care;

namespace RehabTrack.Records.Start;

/// <summary>A treatment, medicine or sign of the demo.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="From">The day, or the first of its days.</param>
/// <param name="Until">The last day; null for one day.</param>
/// <param name="InCase">Whether it belongs to the horse's first case, not to the whole horse.</param>
/// <param name="Words">In words.</param>
/// <param name="LamenessAaep">How lame; null when not graded.</param>
/// <param name="Context">How lameness was looked for.</param>
/// <param name="StandDownUntil">The vet's own stand-down date.</param>
public sealed record DemoCare(
    CareKind Kind,
    DateOnly From,
    DateOnly? Until = null,
    bool InCase = false,
    string? Words = null,
    int? LamenessAaep = null,
    string? Context = null,
    DateOnly? StandDownUntil = null
);
