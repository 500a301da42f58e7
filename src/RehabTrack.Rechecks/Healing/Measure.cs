namespace RehabTrack.Rechecks.Healing;

/// <summary>The measure that a trend speaks of.</summary>
public enum Measure
{
    /// <summary>Lesion volume, cm³.</summary>
    LesionVolume,

    /// <summary>Lesion area at the linked worst level, cm².</summary>
    LesionArea,

    /// <summary>The lesion's share of the ligament at the linked worst level, %, where only shares were recorded.</summary>
    LesionPercent,

    /// <summary>By how much the linked worst level is thicker than the same level of the other sound limb, cm.</summary>
    ThicknessExcess,

    /// <summary>By how much the linked worst level is thicker than it was on this horse before the injury, cm.</summary>
    ThicknessAboveOwn,

    /// <summary>Thickness at the linked worst level, cm.</summary>
    Thickness,

    /// <summary>Echogenicity and fibre-alignment grades: words only, no rate.</summary>
    Grades,
}
