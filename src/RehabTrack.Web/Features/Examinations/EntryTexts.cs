using RehabTrack.Rechecks.Exams;
using RehabTrack.Web.Features.Examinations.Worksheets;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Examinations;

/// <summary>What the entry's columns and fields are called on the page.</summary>
public static class EntryTexts
{
    /// <summary>The heading of a column, without its unit.</summary>
    public static string NameOf(EntryColumn column) =>
        column switch
        {
            EntryColumn.Part => ExaminationPage.ColumnPart,
            EntryColumn.Level => ExaminationPage.ColumnLevel,
            EntryColumn.Lesion => ExaminationPage.ColumnLesion,
            EntryColumn.Role => ExaminationPage.ColumnRole,
            EntryColumn.LigamentArea => ExaminationPage.ColumnLigamentArea,
            EntryColumn.LesionArea => ExaminationPage.ColumnLesionArea,
            EntryColumn.Thickness => ExaminationPage.ColumnThickness,
            EntryColumn.Width => ExaminationPage.ColumnWidth,
            EntryColumn.Echogenicity => ExaminationPage.ColumnEchogenicity,
            EntryColumn.FibreAlignment => ExaminationPage.ColumnFibreAlignment,
            EntryColumn.Note => ExaminationPage.ColumnNote,
            EntryColumn.OtherLimbLigamentArea => ExaminationPage.ColumnOtherLimbArea,
            EntryColumn.OtherLimbThickness => ExaminationPage.ColumnOtherLimbThickness,
        };

    /// <summary>The unit of a column; null where it has none.</summary>
    /// <param name="column">The column.</param>
    /// <param name="byZones">Whether levels are zones.</param>
    public static string? UnitOf(EntryColumn column, bool byZones) =>
        column switch
        {
            EntryColumn.Level when byZones => ExaminationPage.UnitZone,
            EntryColumn.Level or EntryColumn.Thickness or EntryColumn.Width or EntryColumn.OtherLimbThickness => ExaminationPage.UnitCm,
            EntryColumn.LigamentArea or EntryColumn.LesionArea or EntryColumn.OtherLimbLigamentArea => ExaminationPage.UnitCm2,
            EntryColumn.Echogenicity or EntryColumn.FibreAlignment => ExaminationPage.UnitGrade,
            EntryColumn.Part or EntryColumn.Lesion or EntryColumn.Role or EntryColumn.Note => null,
        };

    /// <summary>The part and level of a row as typed: <c>body 12 cm</c>, <c>body, zone 2B</c>.</summary>
    /// <param name="row">The row.</param>
    /// <param name="byZones">Whether levels are zones.</param>
    public static string PlaceOf(EntryRow row, bool byZones)
    {
        ArgumentNullException.ThrowIfNull(row);
        return string.Format(
            TextCulture.Default,
            byZones ? ExaminationPage.ZoneText : ExaminationPage.LevelText,
            row[EntryColumn.Part],
            row[EntryColumn.Level]
        );
    }

    /// <summary>The label of a field above the grid.</summary>
    public static string NameOf(HeaderField field) =>
        field switch
        {
            HeaderField.Date => ExaminationPage.FieldDate,
            HeaderField.Name => ExaminationPage.FieldName,
            HeaderField.Stance => ExaminationPage.FieldStance,
            HeaderField.Examiner => ExaminationPage.FieldExaminer,
            HeaderField.Measurer => ExaminationPage.FieldMeasurer,
            HeaderField.Transducer => ExaminationPage.FieldTransducer,
            HeaderField.Standoff => ExaminationPage.FieldStandoff,
            HeaderField.Coupling => ExaminationPage.FieldCoupling,
            HeaderField.Clipped => ExaminationPage.FieldClipped,
            HeaderField.EchogenicityScale => ExaminationPage.FieldEchogenicityScale,
            HeaderField.OtherLimb => ExaminationPage.FieldOtherLimb,
            HeaderField.Landmark => ExaminationPage.FieldLandmark,
            HeaderField.Zones => ExaminationPage.FieldZones,
            HeaderField.Origin => Names.AsTitle(Names.Of(FixedPointKind.Origin)),
            HeaderField.Division => Names.AsTitle(Names.Of(FixedPointKind.Division)),
            HeaderField.MedialInsertion => Names.AsTitle(Names.Of(FixedPointKind.MedialInsertion)),
            HeaderField.LateralInsertion => Names.AsTitle(Names.Of(FixedPointKind.LateralInsertion)),
        };
}
