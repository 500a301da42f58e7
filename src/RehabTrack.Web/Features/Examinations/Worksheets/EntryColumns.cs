using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Web.Features.Examinations.Worksheets;

/// <summary>What the grid knows of its columns.</summary>
public static class EntryColumns
{
    /// <summary>All columns from left to right.</summary>
    public static IReadOnlyList<EntryColumn> All { get; } =
    [
        EntryColumn.Part,
        EntryColumn.Level,
        EntryColumn.Lesion,
        EntryColumn.Role,
        EntryColumn.LigamentArea,
        EntryColumn.LesionArea,
        EntryColumn.Thickness,
        EntryColumn.Width,
        EntryColumn.OtherLimbLigamentArea,
        EntryColumn.OtherLimbThickness,
        EntryColumn.Echogenicity,
        EntryColumn.FibreAlignment,
        EntryColumn.Note,
    ];

    /// <summary>The columns of the other limb: shown where it is read too, since the grid is wide without them.</summary>
    public static IReadOnlyList<EntryColumn> OfOtherLimb { get; } = [EntryColumn.OtherLimbLigamentArea, EntryColumn.OtherLimbThickness];

    /// <summary>The columns that a worksheet shows: all, but those of the other limb only where it is read or something stands in them.</summary>
    public static IReadOnlyList<EntryColumn> Shown(Worksheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        bool other =
            sheet[HeaderField.OtherLimb] == HeaderAnswers.Yes
            || sheet.Grid.Rows.Any(row => OfOtherLimb.Any(column => row[column].Length > 0));
        return other ? All : [.. All.Except(OfOtherLimb)];
    }

    /// <summary>The columns that hold what was measured: one of them makes a level read.</summary>
    public static IReadOnlyList<EntryColumn> Measured { get; } =
    [
        EntryColumn.LigamentArea,
        EntryColumn.LesionArea,
        EntryColumn.Thickness,
        EntryColumn.Width,
        EntryColumn.Echogenicity,
        EntryColumn.FibreAlignment,
    ];

    /// <summary>The canonical name of the column, as import files and problems call it.</summary>
    public static string FieldOf(EntryColumn column) =>
        column switch
        {
            EntryColumn.Part => ReadingFields.Part,
            EntryColumn.Level => ReadingFields.Level,
            EntryColumn.Lesion => ReadingFields.Lesion,
            EntryColumn.Role => ReadingFields.Role,
            EntryColumn.LigamentArea => ReadingFields.LigamentArea,
            EntryColumn.LesionArea => ReadingFields.LesionArea,
            EntryColumn.Thickness => ReadingFields.Thickness,
            EntryColumn.Width => ReadingFields.Width,
            EntryColumn.Echogenicity => ReadingFields.EchogenicityGrade,
            EntryColumn.FibreAlignment => ReadingFields.FibreAlignmentGrade,
            EntryColumn.Note => ReadingFields.Note,
            EntryColumn.OtherLimbLigamentArea => ReadingFields.OtherLimbLigamentArea,
            EntryColumn.OtherLimbThickness => ReadingFields.OtherLimbThickness,
        };

    /// <summary>The column of a canonical name; the level's column when the problem concerns the whole reading.</summary>
    public static EntryColumn OfField(string field) =>
        All.Where(column => string.Equals(FieldOf(column), field, StringComparison.Ordinal))
            // A zone stands in the level's column, as everything that concerns the whole reading.
            .Append(EntryColumn.Level)
            .First();

    /// <summary>Whether the column takes a decimal number.</summary>
    public static bool IsNumber(EntryColumn column) =>
        column
            is EntryColumn.Level
                or EntryColumn.LigamentArea
                or EntryColumn.LesionArea
                or EntryColumn.Thickness
                or EntryColumn.Width
                or EntryColumn.OtherLimbLigamentArea
                or EntryColumn.OtherLimbThickness;

    /// <summary>Whether the column takes a grade.</summary>
    public static bool IsGrade(EntryColumn column) => column is EntryColumn.Echogenicity or EntryColumn.FibreAlignment;

    /// <summary>Whether the column takes one of a few words.</summary>
    public static bool IsChoice(EntryColumn column) => column is EntryColumn.Part or EntryColumn.Role;
}
