namespace RehabTrack.Rechecks.Healing;

/// <summary>A size measured at one place.</summary>
public enum MeasuredSize
{
    /// <summary>Ligament area, cm².</summary>
    LigamentArea,

    /// <summary>Lesion area, cm².</summary>
    LesionArea,

    /// <summary>The lesion's share of the ligament, %.</summary>
    LesionPercent,

    /// <summary>Dorsoplantar thickness, cm.</summary>
    Thickness,

    /// <summary>Width, cm.</summary>
    Width,
}
