namespace RehabTrack.Rechecks.Healing;

/// <summary>What a measure can be asked.</summary>
public static class MeasureRules
{
    /// <summary>
    /// Whether there is a slowest acceptable rate, and a target, for the measure: sizes that end at 0 when all has healed. A thickness by
    /// itself ends at an unknown sound value; its excess over a sound one ends at 0.
    /// </summary>
    public static bool HasRate(Measure measure) => IsOfLesion(measure) || IsExcess(measure);

    /// <summary>Whether the measure is what a thickness has above a sound one.</summary>
    public static bool IsExcess(Measure measure) => measure is Measure.ThicknessExcess or Measure.ThicknessAboveOwn;

    /// <summary>Whether the measure is a size of the lesion itself.</summary>
    public static bool IsOfLesion(Measure measure) => measure is Measure.LesionVolume or Measure.LesionArea or Measure.LesionPercent;
}
