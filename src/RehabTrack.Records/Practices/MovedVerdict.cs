using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Records.Practices;

/// <summary>An open case whose verdict other settings would move.</summary>
/// <param name="CaseId">The case.</param>
/// <param name="Horse">The horse's name.</param>
/// <param name="Limb">The limb.</param>
/// <param name="Structure">The structure.</param>
/// <param name="Now">The verdict with the settings in force.</param>
/// <param name="Then">The verdict with the other settings.</param>
public sealed record MovedVerdict(Guid CaseId, string Horse, Limb Limb, Structure Structure, Verdict Now, Verdict Then);
