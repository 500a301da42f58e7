using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Exams;

/// <summary>How far one landmark lies from another, measured by a vet on this horse: cannon length varies, so no table can give it.</summary>
/// <param name="Proximal">The landmark further up.</param>
/// <param name="Distal">The landmark further down.</param>
/// <param name="Distance">From the first to the second, above 0 cm.</param>
public sealed record LandmarkDistance(Landmark Proximal, Landmark Distal, Centimetres Distance);
