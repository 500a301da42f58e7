using System.Globalization;
using CsvHelper;
using RehabTrack.Exchange.Rows;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Exchange.Writing;

/// <summary>
/// Writes cases as the canonical sheet, UTF-8 with a byte-order mark, a row a reading. What it writes, <see cref="SheetImport"/> reads
/// back to the same cases. Text that a spreadsheet would take for a formula gets an apostrophe before it.
/// </summary>
public static class CaseFileWriter
{
    /// <summary>Writes cases.</summary>
    /// <param name="stream">Takes the sheet; left open.</param>
    /// <param name="files">The cases, in the order they are written.</param>
    /// <param name="style">Separator and decimal mark.</param>
    public static void Write(Stream stream, IEnumerable<CaseFile> files, SheetStyle style = SheetStyle.Comma)
    {
        ArgumentNullException.ThrowIfNull(files);
        using CsvWriter writer = CsvWriter.Create(
            stream,
            new CsvWriterOptions
            {
                Separator = style == SheetStyle.Comma ? ',' : ';',
                HasHeader = false,
                WriteByteOrderMark = true,
            },
            leaveOpen: true
        );
        WriteRecord(writer, SheetColumns.All);
        foreach (CaseFile file in files)
        {
            foreach (Examination examination in file.Course.Examinations)
            {
                foreach (Reading reading in examination.Readings)
                {
                    WriteRecord(writer, Cells(file, examination, reading, style));
                }
            }
        }

        writer.Flush();
    }

    private static void WriteRecord(CsvWriter writer, IEnumerable<string> cells)
    {
        foreach (string cell in cells)
        {
            writer.WriteField(cell);
        }

        writer.EndRecord();
    }

    private static IEnumerable<string> Cells(CaseFile file, Examination examination, Reading reading, SheetStyle style)
    {
        Dictionary<string, string> cells = new(StringComparer.Ordinal)
        {
            [SheetColumns.Case] = Text(file.Label),
            [SheetColumns.Horse] = Text(file.Horse.Name),
            [SheetColumns.Microchip] = Text(file.Horse.Microchip),
            [ReadingFields.BirthDate] = Date(file.Horse.BirthDate),
            [SheetColumns.Limb] = AnatomyCodes.Limbs.CodeOf(file.Course.Limb),
            [SheetColumns.Structure] = AnatomyCodes.Structures.CodeOf(file.Course.Structure),
            [SheetColumns.Landmark] = LandmarkOf(file.Course, examination) is { } landmark ? AnatomyCodes.Landmarks.CodeOf(landmark) : "",
            [ReadingFields.OnsetDate] = Date(file.Course.Onset),
            [ReadingFields.ExaminationDate] = Date(examination.Date),
            [SheetColumns.Examination] = Text(examination.Name),
            [SheetColumns.Stance] = ExamCodes.Stances.CodeOf(examination.Stance),
            [SheetColumns.Examiner] = Text(examination.Examiner),
            [SheetColumns.Transducer] = Text(examination.Transducer),
            [ReadingFields.Part] = AnatomyCodes.Parts.CodeOf(reading.Part),
            [ReadingFields.Level] = Number(reading.Level.OnTape?.Value, style),
            [ReadingFields.ZoneScheme] = examination.Zones is { } scheme ? ZoneSchemes.CodeOf(scheme) : "",
            [ReadingFields.Zone] = reading.Level.Zone?.Name ?? "",
            [ReadingFields.ZoneLength] = Number(file.Course.ZoneLength?.Value, style),
            [ReadingFields.Plane] = AnatomyCodes.Planes.CodeOf(reading.Plane),
            [ReadingFields.Lesion] = Text(reading.Lesion),
            [ReadingFields.Role] = ExamCodes.Roles.CodeOf(reading.Role),
            [ReadingFields.LigamentArea] = Number(reading.LigamentArea?.Value, style),
            [ReadingFields.LesionArea] =
                reading.LesionArea.Kind == LesionAreaKind.Diffuse
                    ? ExamCodes.Diffuse
                    : Number(reading.LesionArea.MeasuredArea?.Value, style),
            [ReadingFields.LesionPercent] = Number(reading.LesionPercent?.Value, style),
            [ReadingFields.Thickness] = Number(reading.Thickness?.Value, style),
            [ReadingFields.Width] = Number(reading.Width?.Value, style),
            [ReadingFields.EchogenicityScale] = reading.Echogenicity is { } echogenicity ? ExamCodes.CodeOf(echogenicity.Scale) : "",
            [ReadingFields.EchogenicityGrade] = Number(reading.Echogenicity?.Value, style),
            [ReadingFields.FibreAlignmentScale] = reading.FibreAlignment is { } fibre ? ExamCodes.CodeOf(fibre.Scale) : "",
            [ReadingFields.FibreAlignmentGrade] = Number(reading.FibreAlignment?.Value, style),
            [ReadingFields.Measurer] = Text(reading.Measurer),
            [ReadingFields.Repeat] = Text(reading.Repeat),
            [ReadingFields.Note] = Text(reading.Note),
            [SheetColumns.OtherLimb] = ExamCodes.OtherLimbs.CodeOf(file.Course.OtherLimb),
            [ReadingFields.OtherLimbLigamentArea] = Number(reading.OtherLimbLigamentArea?.Value, style),
            [ReadingFields.OtherLimbThickness] = Number(reading.OtherLimbThickness?.Value, style),
        };
        foreach (FixedPointKind kind in Enum.GetValues<FixedPointKind>())
        {
            cells[FixedPointRules.FieldOf(kind)] = Number(FixedPoint.LevelOf(examination.FixedPoints, kind), style);
        }

        return SheetColumns.All.Select(column => cells[column]);
    }

    private static Landmark? LandmarkOf(CaseCourse course, Examination examination) =>
        examination.Zones is { } zones ? ZoneSchemes.LandmarkOf(zones) : examination.Landmark ?? course.Landmark;

    private static string Text(string? text) => CellText.Guard(text ?? "");

    private static string Date(DateOnly? date) => date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "";

    private static string Number(double? value, SheetStyle style)
    {
        string text = value?.ToString("R", CultureInfo.InvariantCulture) ?? "";
        return style == SheetStyle.Semicolon ? text.Replace('.', ',') : text;
    }
}
