using System.Globalization;
using RehabTrack.Exchange.Rows;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Batch;

/// <summary>
/// Read rows in a file: figures as figures, texts only where they differ from the row before, since the rows of a case mostly stand
/// together.
/// </summary>
internal static class RowFile
{
    /// <summary>Appends a row of a plan without groups.</summary>
    /// <param name="file">The file.</param>
    /// <param name="row">The row.</param>
    /// <param name="before">The row appended before; null for the first.</param>
    public static void Write(BinaryWriter file, SheetRow row, SheetRow? before)
    {
        file.Write(row.Row);
        Text(file, row.Case, before?.Case);
        Text(file, row.Horse, before?.Horse);
        Text(file, row.Microchip, before?.Microchip);
        Date(file, row.BirthDate);
        file.Write((byte)row.Limb);
        file.Write((byte)row.Structure);
        file.Write((sbyte)(row.Landmark is { } landmark ? (int)landmark : -1));
        Date(file, row.Onset);
        Date(file, row.Date);
        Text(file, row.Examination, before?.Examination);
        file.Write((byte)row.Stance);
        Text(file, row.Examiner, before?.Examiner);
        Text(file, row.Transducer, before?.Transducer);
        file.Write((byte)row.OtherLimb);
        Number(file, row.ZoneLengthCm);
        file.Write((byte)row.FixedPoints.Count);
        foreach (FixedPoint point in row.FixedPoints)
        {
            file.Write((byte)point.Kind);
            file.Write(point.Level.Value);
        }

        Write(file, row.Reading, before?.Reading);
    }

    /// <summary>Reads the next row.</summary>
    /// <param name="file">The file.</param>
    /// <param name="before">The row read before; null for the first.</param>
    /// <param name="plan">The plan that the row is said to come from.</param>
    public static SheetRow Read(BinaryReader file, SheetRow? before, RowPlan plan)
    {
        int row = file.ReadInt32();
        return new SheetRow
        {
            Row = row,
            Id = row.ToString(CultureInfo.InvariantCulture),
            Case = Text(file, before?.Case)!,
            Horse = Text(file, before?.Horse),
            Microchip = Text(file, before?.Microchip),
            BirthDate = Date(file),
            Limb = (Limb)file.ReadByte(),
            Structure = (Structure)file.ReadByte(),
            Landmark = file.ReadSByte() is >= 0 and var landmark ? (Landmark)landmark : null,
            Onset = Date(file),
            Date = Date(file)!.Value,
            Examination = Text(file, before?.Examination),
            Stance = (Stance)file.ReadByte(),
            Examiner = Text(file, before?.Examiner),
            Transducer = Text(file, before?.Transducer),
            OtherLimb = (OtherLimb)file.ReadByte(),
            ZoneLengthCm = Number(file),
            FixedPoints = FixedPoints(file),
            Reading = Read(file, before?.Reading),
            Plan = plan,
        };
    }

    private static void Write(BinaryWriter file, ReadingDraft draft, ReadingDraft? before)
    {
        file.Write((sbyte)(draft.Part is { } part ? (int)part : -1));
        Number(file, draft.LevelCm);
        file.Write((sbyte)(draft.ZoneScheme is { } scheme ? (int)scheme : -1));
        Text(file, draft.Zone, before?.Zone);
        file.Write((byte)draft.Plane);
        Text(file, draft.Lesion, before?.Lesion);
        file.Write((byte)draft.Role);
        Number(file, draft.LigamentAreaCm2);
        Number(file, draft.LesionAreaCm2);
        file.Write(draft.LesionIsDiffuse);
        Number(file, draft.LesionPercent);
        Number(file, draft.ThicknessCm);
        Number(file, draft.WidthCm);
        Number(file, draft.OtherLimbLigamentAreaCm2);
        Number(file, draft.OtherLimbThicknessCm);
        Text(file, draft.EchogenicityScale.Id, before?.EchogenicityScale.Id);
        Number(file, draft.EchogenicityGrade);
        Text(file, draft.FibreAlignmentScale.Id, before?.FibreAlignmentScale.Id);
        Number(file, draft.FibreAlignmentGrade);
        Text(file, draft.Measurer, before?.Measurer);
        Text(file, draft.Repeat, before?.Repeat);
        Text(file, draft.Note, before?.Note);
    }

    private static ReadingDraft Read(BinaryReader file, ReadingDraft? before) =>
        new()
        {
            Part = file.ReadSByte() is >= 0 and var part ? (Part)part : null,
            LevelCm = Number(file),
            ZoneScheme = file.ReadSByte() is >= 0 and var scheme ? (ZoneScheme)scheme : null,
            Zone = Text(file, before?.Zone),
            Plane = (ImagePlane)file.ReadByte(),
            Lesion = Text(file, before?.Lesion),
            Role = (ReadingRole)file.ReadByte(),
            LigamentAreaCm2 = Number(file),
            LesionAreaCm2 = Number(file),
            LesionIsDiffuse = file.ReadBoolean(),
            LesionPercent = Number(file),
            ThicknessCm = Number(file),
            WidthCm = Number(file),
            OtherLimbLigamentAreaCm2 = Number(file),
            OtherLimbThicknessCm = Number(file),
            EchogenicityScale = GradeScales.Find(Text(file, before?.EchogenicityScale.Id)!)!,
            EchogenicityGrade = Number(file),
            FibreAlignmentScale = GradeScales.Find(Text(file, before?.FibreAlignmentScale.Id)!)!,
            FibreAlignmentGrade = Number(file),
            Measurer = Text(file, before?.Measurer),
            Repeat = Text(file, before?.Repeat),
            Note = Text(file, before?.Note),
        };

    private static FixedPoint[] FixedPoints(BinaryReader file)
    {
        int count = file.ReadByte();
        FixedPoint[] points = count == 0 ? [] : new FixedPoint[count];
        foreach (ref FixedPoint point in points.AsSpan())
        {
            point = new FixedPoint((FixedPointKind)file.ReadByte(), new Centimetres(file.ReadDouble()));
        }

        return points;
    }

    private static void Text(BinaryWriter file, string? text, string? before)
    {
        bool isNew = !string.Equals(text, before, StringComparison.Ordinal);
        file.Write(
            (byte)(
                isNew
                    ? text is null
                        ? Kept.Nothing
                        : Kept.Text
                    : Kept.AsBefore
            )
        );
        if (isNew && text is not null)
        {
            file.Write(text);
        }
    }

    private static string? Text(BinaryReader file, string? before) =>
        (Kept)file.ReadByte() switch
        {
            Kept.AsBefore => before,
            Kept.Nothing => null,
            Kept.Text => file.ReadString(),
        };

    private static void Number(BinaryWriter file, double? number)
    {
        file.Write(number is not null);
        if (number is { } known)
        {
            file.Write(known);
        }
    }

    private static double? Number(BinaryReader file) => file.ReadBoolean() ? file.ReadDouble() : null;

    private static void Date(BinaryWriter file, DateOnly? date) => file.Write(date?.DayNumber ?? -1);

    private static DateOnly? Date(BinaryReader file) => file.ReadInt32() is >= 0 and var day ? DateOnly.FromDayNumber(day) : null;

    /// <summary>What stands for a text.</summary>
    private enum Kept : byte
    {
        AsBefore,
        Nothing,
        Text,
    }
}
