using System.Text.Json.Serialization;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Exams;

/// <summary>A reading as it was entered, before <see cref="ReadingRules"/> looked at it: any number can stand in it. Absent is null.</summary>
public sealed record ReadingDraft
{
    /// <summary>The part; null when not given, which is a problem.</summary>
    public Part? Part { get; init; }

    /// <summary>Distance distal to the landmark, cm; null when not given, which is a problem unless a zone is.</summary>
    public double? LevelCm { get; init; }

    /// <summary>The scheme of the examination whose levels are zones; null when they are read off a tape.</summary>
    public ZoneScheme? ZoneScheme { get; init; }

    /// <summary>The name of the zone as entered; null when not given.</summary>
    public string? Zone { get; init; }

    /// <summary>The level: the zone when it is one of the scheme, else the distance on the tape; null when neither is given.</summary>
    [JsonIgnore]
    public Level? Level =>
        ZoneScheme is { } scheme && Zone is not null
            ? ZoneSchemes.Find(scheme, Zone) is { } zone
                ? new Level(zone)
                : null
            : LevelCm is { } tape
                ? new Level(new Centimetres(tape))
                : null;

    /// <summary>The plane of the image.</summary>
    public ImagePlane Plane { get; init; } = ImagePlane.ShortAxis;

    /// <summary>The lesion's name; null for the one lesion without a name.</summary>
    public string? Lesion { get; init; }

    /// <summary>The role in the triplet.</summary>
    public ReadingRole Role { get; init; }

    /// <summary>Ligament area, cm².</summary>
    public double? LigamentAreaCm2 { get; init; }

    /// <summary>Lesion area, cm²; 0 is looked, none seen.</summary>
    public double? LesionAreaCm2 { get; init; }

    /// <summary>Whether the lesion is there and cannot be outlined; then the area must be null.</summary>
    public bool LesionIsDiffuse { get; init; }

    /// <summary>The lesion's share, %.</summary>
    public double? LesionPercent { get; init; }

    /// <summary>Dorsoplantar thickness, cm.</summary>
    public double? ThicknessCm { get; init; }

    /// <summary>Width, cm.</summary>
    public double? WidthCm { get; init; }

    /// <summary>Ligament area at the same level of the other limb, cm².</summary>
    public double? OtherLimbLigamentAreaCm2 { get; init; }

    /// <summary>Thickness at the same level of the other limb, cm.</summary>
    public double? OtherLimbThicknessCm { get; init; }

    /// <summary>The scale of the echogenicity grade.</summary>
    public GradeScale EchogenicityScale { get; init; } = GradeScales.Echogenicity0To3;

    /// <summary>Echogenicity grade as entered; must be a whole number of the scale.</summary>
    public double? EchogenicityGrade { get; init; }

    /// <summary>The scale of the fibre-alignment grade.</summary>
    public GradeScale FibreAlignmentScale { get; init; } = GradeScales.FibreAlignment0To3;

    /// <summary>Fibre-alignment grade as entered; must be a whole number of the scale.</summary>
    public double? FibreAlignmentGrade { get; init; }

    /// <summary>Who traced the outline.</summary>
    public string? Measurer { get; init; }

    /// <summary>Which repeat of the same tracing.</summary>
    public string? Repeat { get; init; }

    /// <summary>A note.</summary>
    public string? Note { get; init; }

    /// <summary>Whether anything was measured: an area, a share, a length or a grade; <c>diffuse</c> counts.</summary>
    public bool HasMeasurement =>
        LesionIsDiffuse
        || (LigamentAreaCm2 ?? LesionAreaCm2 ?? LesionPercent ?? ThicknessCm ?? WidthCm ?? EchogenicityGrade ?? FibreAlignmentGrade)
            is not null;
}
