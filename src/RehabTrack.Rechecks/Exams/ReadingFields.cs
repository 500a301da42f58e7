namespace RehabTrack.Rechecks.Exams;

/// <summary>The names of what is entered for a reading: the columns of the import sheet, and the fields of a problem.</summary>
public static class ReadingFields
{
    /// <summary>Part.</summary>
    public const string Part = "part";

    /// <summary>Level, cm.</summary>
    public const string Level = "level_cm";

    /// <summary>The zone scheme of the examination.</summary>
    public const string ZoneScheme = "zone_scheme";

    /// <summary>The zone.</summary>
    public const string Zone = "zone";

    /// <summary>The length of a zone measured on the horse, cm: one for the case.</summary>
    public const string ZoneLength = "zone_length_cm";

    /// <summary>Plane.</summary>
    public const string Plane = "plane";

    /// <summary>The lesion's name.</summary>
    public const string Lesion = "lesion";

    /// <summary>Role in the triplet.</summary>
    public const string Role = "role";

    /// <summary>Ligament area, cm².</summary>
    public const string LigamentArea = "ligament_area_cm2";

    /// <summary>Lesion area, cm², or <c>diffuse</c>.</summary>
    public const string LesionArea = "lesion_area_cm2";

    /// <summary>The lesion's share, %.</summary>
    public const string LesionPercent = "lesion_percent";

    /// <summary>Thickness, cm.</summary>
    public const string Thickness = "thickness_cm";

    /// <summary>Width, cm.</summary>
    public const string Width = "width_cm";

    /// <summary>Ligament area of the other limb, cm².</summary>
    public const string OtherLimbLigamentArea = "other_limb_ligament_area_cm2";

    /// <summary>Thickness of the other limb, cm.</summary>
    public const string OtherLimbThickness = "other_limb_thickness_cm";

    /// <summary>The scale of the echogenicity grade.</summary>
    public const string EchogenicityScale = "echogenicity_scale";

    /// <summary>Echogenicity grade.</summary>
    public const string EchogenicityGrade = "echogenicity_grade";

    /// <summary>The scale of the fibre-alignment grade.</summary>
    public const string FibreAlignmentScale = "fibre_alignment_scale";

    /// <summary>Fibre-alignment grade.</summary>
    public const string FibreAlignmentGrade = "fibre_alignment_grade";

    /// <summary>Who traced the outline.</summary>
    public const string Measurer = "measurer";

    /// <summary>Which repeat.</summary>
    public const string Repeat = "repeat";

    /// <summary>Note.</summary>
    public const string Note = "note";

    /// <summary>Date of the examination.</summary>
    public const string ExaminationDate = "examination_date";

    /// <summary>Date of the injury.</summary>
    public const string OnsetDate = "onset_date";

    /// <summary>Date of birth.</summary>
    public const string BirthDate = "birth_date";
}
