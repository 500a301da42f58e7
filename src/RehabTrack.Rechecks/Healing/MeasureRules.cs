namespace RehabTrack.Rechecks.Healing;

/// <summary>What a measure can be asked.</summary>
public static class MeasureRules
{
    /// <summary>
    /// Whether there is a slowest acceptable rate, and a target, for the measure: sizes that end at 0 when all has healed. A thickness by
    /// itself ends at an unknown sound value; its excess over the other sound limb ends at 0.
    /// </summary>
    public static bool HasRate(Measure measure) => IsOfLesion(measure) || measure == Measure.ThicknessExcess;

    /// <summary>Whether the measure is a size of the lesion itself.</summary>
    public static bool IsOfLesion(Measure measure) => measure is Measure.LesionVolume or Measure.LesionArea or Measure.LesionPercent;
}
