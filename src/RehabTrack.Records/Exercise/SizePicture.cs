using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Records.Exercise;

/// <summary>The sizes of one injury as a vet released them to the owner; they stay as they were on that day.</summary>
/// <param name="Limb">The limb.</param>
/// <param name="Bars">The examinations, by date.</param>
public sealed record SizePicture(Limb Limb, IReadOnlyList<SizeBar> Bars);
