using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Records.Keeping;

/// <summary>One reading as entered; it belongs to its examination, whose version token guards it.</summary>
internal sealed class ReadingRecord
{
    public Guid Id { get; set; }

    public Guid PracticeId { get; set; }

    public Guid ExaminationId { get; set; }

    /// <summary>Its place in the order of entry.</summary>
    public int Position { get; set; }

    public Part? Part { get; set; }

    public double? LevelCm { get; set; }

    /// <summary>The scheme of its zone, that of its examination; null on a tape.</summary>
    public ZoneScheme? ZoneScheme { get; set; }

    /// <summary>The zone as entered; then the level in cm is empty.</summary>
    public string? Zone { get; set; }

    public ImagePlane Plane { get; set; }

    public string? Lesion { get; set; }

    public ReadingRole Role { get; set; }

    public double? LigamentAreaCm2 { get; set; }

    public double? LesionAreaCm2 { get; set; }

    public bool LesionIsDiffuse { get; set; }

    public double? LesionPercent { get; set; }

    public double? ThicknessCm { get; set; }

    public double? WidthCm { get; set; }

    public double? OtherLimbLigamentAreaCm2 { get; set; }

    public double? OtherLimbThicknessCm { get; set; }

    public required string EchogenicityScale { get; set; }

    public double? EchogenicityGrade { get; set; }

    public required string FibreAlignmentScale { get; set; }

    public double? FibreAlignmentGrade { get; set; }

    public string? Measurer { get; set; }

    public string? Repeat { get; set; }

    public string? Note { get; set; }
}
