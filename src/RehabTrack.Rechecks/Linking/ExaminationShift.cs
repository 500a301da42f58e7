using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Linking;

/// <summary>How much an examination's whole tape is shifted against the first examination's.</summary>
/// <param name="ExaminationId">The examination.</param>
/// <param name="Shift">Positive when this examination reads larger numbers at the same place, cm; posterior mean.</param>
/// <param name="StandardDeviation">Posterior standard deviation of the shift, cm; 0 for the first examination.</param>
public sealed record ExaminationShift(string ExaminationId, Centimetres Shift, Centimetres StandardDeviation)
{
    /// <summary>What is added to this examination's levels so that they count from the common landmark, cm; 0 when they do already.</summary>
    public Centimetres LandmarkOffset { get; init; }
}
