using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Exams;

/// <summary>What was measured at one level of one part in one plane. Absent is absent: null, never zero.</summary>
public sealed record Reading
{
    /// <summary>Opaque identity, unique within the case: the record's id, or the row of a file.</summary>
    public required string Id { get; init; }

    /// <summary>The part the level lies in.</summary>
    public required Part Part { get; init; }

    /// <summary>Distance distal to the landmark, 0 to 60 cm, or the zone; all of an examination are told the same way.</summary>
    public required Level Level { get; init; }

    /// <summary>The plane of the image.</summary>
    public ImagePlane Plane { get; init; } = ImagePlane.ShortAxis;

    /// <summary>The lesion's name within the case; null when the case has one lesion without a name.</summary>
    public string? Lesion { get; init; }

    /// <summary>The role in the triplet.</summary>
    public ReadingRole Role { get; init; }

    /// <summary>Cross-sectional area of the ligament, above 0 cm².</summary>
    public SquareCentimetres? LigamentArea { get; init; }

    /// <summary>Cross-sectional area of the lesion.</summary>
    public LesionArea LesionArea { get; init; }

    /// <summary>The lesion's share, where only the share was recorded, 0 to 100 %.</summary>
    public Percent? LesionPercent { get; init; }

    /// <summary>Dorsoplantar thickness, cm.</summary>
    public Centimetres? Thickness { get; init; }

    /// <summary>Width, cm.</summary>
    public Centimetres? Width { get; init; }

    /// <summary>Cross-sectional area of the ligament at the same level of the other limb, above 0 cm².</summary>
    public SquareCentimetres? OtherLimbLigamentArea { get; init; }

    /// <summary>Dorsoplantar thickness at the same level of the other limb, above 0 cm.</summary>
    public Centimetres? OtherLimbThickness { get; init; }

    /// <summary>Echogenicity grade.</summary>
    public Grade? Echogenicity { get; init; }

    /// <summary>Fibre-alignment grade.</summary>
    public Grade? FibreAlignment { get; init; }

    /// <summary>Who traced the outline; null when not recorded.</summary>
    public string? Measurer { get; init; }

    /// <summary>Which repeat of the same tracing this is; null for the only one.</summary>
    public string? Repeat { get; init; }

    /// <summary>A note of the vet, internal unless released.</summary>
    public string? Note { get; init; }
}
