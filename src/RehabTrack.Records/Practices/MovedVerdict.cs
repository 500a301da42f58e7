using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Records.Practices;

/// <summary>An open case whose verdict other settings would move.</summary>
/// <param name="CaseId">The case.</param>
/// <param name="Horse">The horse's name.</param>
/// <param name="Limb">The limb.</param>
/// <param name="Structure">The structure.</param>
/// <param name="Lesion">The lesion's name, when the verdict is that of one of several lesions and it has one.</param>
/// <param name="Part">The part that lesion lies in; null for the verdict of the whole case.</param>
/// <param name="Now">The verdict with the settings in force.</param>
/// <param name="Then">The verdict with the other settings.</param>
public sealed record MovedVerdict(
    Guid CaseId,
    string Horse,
    Limb Limb,
    Structure Structure,
    string? Lesion,
    Part? Part,
    Verdict Now,
    Verdict Then
);
