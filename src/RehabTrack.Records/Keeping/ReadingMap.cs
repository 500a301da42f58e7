using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Keeping;

/// <summary>Between a reading as kept, as entered, and as the heart reads it.</summary>
internal static class ReadingMap
{
    public static ReadingDraft ToDraft(ReadingRecord record) =>
        new()
        {
            Part = record.Part,
            LevelCm = record.LevelCm,
            ZoneScheme = record.ZoneScheme,
            Zone = record.Zone,
            Plane = record.Plane,
            Lesion = record.Lesion,
            Role = record.Role,
            LigamentAreaCm2 = record.LigamentAreaCm2,
            LesionAreaCm2 = record.LesionAreaCm2,
            LesionIsDiffuse = record.LesionIsDiffuse,
            LesionPercent = record.LesionPercent,
            ThicknessCm = record.ThicknessCm,
            WidthCm = record.WidthCm,
            OtherLimbLigamentAreaCm2 = record.OtherLimbLigamentAreaCm2,
            OtherLimbThicknessCm = record.OtherLimbThicknessCm,
            EchogenicityScale = Scale(record.EchogenicityScale),
            EchogenicityGrade = record.EchogenicityGrade,
            FibreAlignmentScale = Scale(record.FibreAlignmentScale),
            FibreAlignmentGrade = record.FibreAlignmentGrade,
            Measurer = record.Measurer,
            Repeat = record.Repeat,
            Note = record.Note,
        };

    public static void Apply(ReadingRecord record, ReadingDraft draft)
    {
        record.Part = draft.Part;
        record.LevelCm = draft.LevelCm;
        record.ZoneScheme = draft.ZoneScheme;
        record.Zone = draft.Level?.Zone?.Name ?? Filled(draft.Zone);
        record.Plane = draft.Plane;
        record.Lesion = Filled(draft.Lesion);
        record.Role = draft.Role;
        record.LigamentAreaCm2 = draft.LigamentAreaCm2;
        record.LesionAreaCm2 = draft.LesionAreaCm2;
        record.LesionIsDiffuse = draft.LesionIsDiffuse;
        record.LesionPercent = draft.LesionPercent;
        record.ThicknessCm = draft.ThicknessCm;
        record.WidthCm = draft.WidthCm;
        record.OtherLimbLigamentAreaCm2 = draft.OtherLimbLigamentAreaCm2;
        record.OtherLimbThicknessCm = draft.OtherLimbThicknessCm;
        record.EchogenicityScale = draft.EchogenicityScale.Id;
        record.EchogenicityGrade = draft.EchogenicityGrade;
        record.FibreAlignmentScale = draft.FibreAlignmentScale.Id;
        record.FibreAlignmentGrade = draft.FibreAlignmentGrade;
        record.Measurer = Filled(draft.Measurer);
        record.Repeat = Filled(draft.Repeat);
        record.Note = Filled(draft.Note);
    }

    public static ReadingRecord New(Guid id, Guid practiceId, Guid examinationId, int position, ReadingDraft draft)
    {
        ReadingRecord record = new()
        {
            Id = id,
            PracticeId = practiceId,
            ExaminationId = examinationId,
            Position = position,
            EchogenicityScale = draft.EchogenicityScale.Id,
            FibreAlignmentScale = draft.FibreAlignmentScale.Id,
        };
        Apply(record, draft);
        return record;
    }

    /// <summary>A reading of a file as entered.</summary>
    public static ReadingDraft ToDraft(Reading reading) =>
        new()
        {
            Part = reading.Part,
            LevelCm = reading.Level.OnTape?.Value,
            ZoneScheme = reading.Level.Scheme,
            Zone = reading.Level.Zone?.Name,
            Plane = reading.Plane,
            Lesion = reading.Lesion,
            Role = reading.Role,
            LigamentAreaCm2 = reading.LigamentArea?.Value,
            LesionAreaCm2 = reading.LesionArea.MeasuredArea?.Value,
            LesionIsDiffuse = reading.LesionArea.Kind == LesionAreaKind.Diffuse,
            LesionPercent = reading.LesionPercent?.Value,
            ThicknessCm = reading.Thickness?.Value,
            WidthCm = reading.Width?.Value,
            OtherLimbLigamentAreaCm2 = reading.OtherLimbLigamentArea?.Value,
            OtherLimbThicknessCm = reading.OtherLimbThickness?.Value,
            EchogenicityScale = reading.Echogenicity?.Scale ?? GradeScales.Echogenicity0To3,
            EchogenicityGrade = reading.Echogenicity?.Value,
            FibreAlignmentScale = reading.FibreAlignment?.Scale ?? GradeScales.FibreAlignment0To3,
            FibreAlignmentGrade = reading.FibreAlignment?.Value,
            Measurer = Filled(reading.Measurer),
            Repeat = Filled(reading.Repeat),
            Note = Filled(reading.Note),
        };

    /// <summary>
    /// The reading as the heart takes it; null for a row of a draft that names no place yet. A value of a draft that the heart cannot
    /// hold (a negative area, a grade off its scale) is read as absent; what was signed or imported holds none such.
    /// </summary>
    public static Reading? ToReading(ReadingRecord record) => ToReading(RecordText.Of(record.Id), ToDraft(record));

    /// <summary>The reading of a draft as the heart takes it, by the same rule.</summary>
    public static Reading? ToReading(string id, ReadingDraft draft)
    {
        if (draft is not { Part: { } part, Level: { } level })
        {
            return null;
        }

        return new Reading
        {
            Id = id,
            Part = part,
            Level = level,
            Plane = draft.Plane,
            Lesion = draft.Lesion,
            Role = draft.Role,
            LigamentArea = draft.LigamentAreaCm2 is > 0 and { } ligament ? new SquareCentimetres(ligament) : null,
            LesionArea =
                draft.LesionIsDiffuse ? LesionArea.Diffuse
                : draft.LesionAreaCm2 is >= 0 and { } lesion ? LesionArea.Measured(new SquareCentimetres(lesion))
                : LesionArea.Unknown,
            LesionPercent = draft.LesionPercent is >= 0 and { } percent ? new Percent(percent) : null,
            Thickness = draft.ThicknessCm is > 0 and { } thickness ? new Centimetres(thickness) : null,
            Width = draft.WidthCm is > 0 and { } width ? new Centimetres(width) : null,
            OtherLimbLigamentArea = draft.OtherLimbLigamentAreaCm2 is > 0 and { } otherArea ? new SquareCentimetres(otherArea) : null,
            OtherLimbThickness = draft.OtherLimbThicknessCm is > 0 and { } otherThickness ? new Centimetres(otherThickness) : null,
            Echogenicity = GradeOf(draft.EchogenicityScale, draft.EchogenicityGrade),
            FibreAlignment = GradeOf(draft.FibreAlignmentScale, draft.FibreAlignmentGrade),
            Measurer = draft.Measurer,
            Repeat = draft.Repeat,
            Note = draft.Note,
        };
    }

    private static Grade? GradeOf(GradeScale scale, double? grade) =>
        grade is { } given && given == Math.Floor(given) && scale.Contains((int)given) ? new Grade(scale, (int)given) : null;

    private static GradeScale Scale(string id) =>
        GradeScales.Find(id) ?? throw new InvalidOperationException($"There is no grading scale {id}.");

    private static string? Filled(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
