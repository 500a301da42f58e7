using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Records.Examinations;

/// <summary>The values of a reading by the names of its fields.</summary>
internal static class ReadingValues
{
    /// <summary>All fields, those of the key too.</summary>
    public static IEnumerable<(string Field, object? Value)> Of(ReadingDraft? reading) =>
        [
            (ReadingFields.Part, reading?.Part),
            (ReadingFields.Level, reading?.LevelCm),
            (ReadingFields.Zone, reading?.Zone),
            (ReadingFields.Plane, reading?.Plane),
            (ReadingFields.Lesion, reading?.Lesion),
            (ReadingFields.Measurer, reading?.Measurer),
            (ReadingFields.Repeat, reading?.Repeat),
            .. Measured(reading),
        ];

    /// <summary>The fields beside the key.</summary>
    public static IEnumerable<(string Field, object? Value)> Measured(ReadingDraft? reading) =>
        [
            (ReadingFields.Role, reading?.Role),
            (ReadingFields.LigamentArea, reading?.LigamentAreaCm2),
            (ReadingFields.LesionArea, reading is { LesionIsDiffuse: true } ? ExamCodes.Diffuse : reading?.LesionAreaCm2),
            (ReadingFields.LesionPercent, reading?.LesionPercent),
            (ReadingFields.Thickness, reading?.ThicknessCm),
            (ReadingFields.Width, reading?.WidthCm),
            (ReadingFields.OtherLimbLigamentArea, reading?.OtherLimbLigamentAreaCm2),
            (ReadingFields.OtherLimbThickness, reading?.OtherLimbThicknessCm),
            (ReadingFields.EchogenicityScale, reading?.EchogenicityGrade is null ? null : reading.EchogenicityScale.Id),
            (ReadingFields.EchogenicityGrade, reading?.EchogenicityGrade),
            (ReadingFields.FibreAlignmentScale, reading?.FibreAlignmentGrade is null ? null : reading.FibreAlignmentScale.Id),
            (ReadingFields.FibreAlignmentGrade, reading?.FibreAlignmentGrade),
            (ReadingFields.Note, reading?.Note),
        ];
}
