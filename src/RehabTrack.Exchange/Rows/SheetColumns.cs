using System.Collections.Frozen;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Rows;

/// <summary>The columns of the import sheet, as <c>docs/import.md</c> documents them.</summary>
public static class SheetColumns
{
    public const string Case = "case";
    public const string Horse = "horse";
    public const string Limb = "limb";
    public const string Structure = "structure";
    public const string Landmark = "landmark";
    public const string Stance = "stance";
    public const string Examination = "examination";
    public const string Microchip = "microchip";
    public const string Examiner = "examiner";
    public const string Transducer = "transducer";
    public const string OtherLimb = "other_limb";

    private static readonly string[] Names =
    [
        Case,
        Horse,
        Limb,
        Structure,
        ReadingFields.Part,
        Landmark,
        ReadingFields.OnsetDate,
        ReadingFields.ExaminationDate,
        ReadingFields.Measurer,
        Stance,
        ReadingFields.Level,
        ReadingFields.Lesion,
        ReadingFields.Role,
        ReadingFields.LigamentArea,
        ReadingFields.LesionArea,
        ReadingFields.Thickness,
        ReadingFields.Width,
        ReadingFields.EchogenicityScale,
        ReadingFields.EchogenicityGrade,
        ReadingFields.FibreAlignmentGrade,
        ReadingFields.Note,
        Examination,
        Microchip,
        ReadingFields.BirthDate,
        ReadingFields.Plane,
        ReadingFields.FibreAlignmentScale,
        Examiner,
        Transducer,
        ReadingFields.LesionPercent,
        ReadingFields.Repeat,
        OtherLimb,
        ReadingFields.OtherLimbLigamentArea,
        ReadingFields.OtherLimbThickness,
        FixedPointRules.FieldOf(FixedPointKind.Origin),
        FixedPointRules.FieldOf(FixedPointKind.Division),
        FixedPointRules.FieldOf(FixedPointKind.MedialInsertion),
        FixedPointRules.FieldOf(FixedPointKind.LateralInsertion),
        ReadingFields.ZoneScheme,
        ReadingFields.Zone,
        ReadingFields.ZoneLength,
    ];

    private static readonly FrozenDictionary<string, int> Indices = Names
        .Index()
        .ToFrozenDictionary(pair => pair.Item, pair => pair.Index, StringComparer.Ordinal);

    private static readonly Dictionary<string, string> Folded = Names.ToDictionary(FoldedText.Of, name => name, StringComparer.Ordinal);

    /// <summary>All columns, in the order of the empty sheet; the optional ones come last.</summary>
    public static IReadOnlyList<string> All => Names;

    /// <summary>The columns whose numbers have a unit, cm or cm².</summary>
    public static IReadOnlyList<string> WithUnit { get; } =
    [.. Names.Where(name => name.EndsWith("_cm", StringComparison.Ordinal) || name.EndsWith("_cm2", StringComparison.Ordinal))];

    /// <summary>The columns that every row needs; in place of the level a zone with its scheme.</summary>
    public static IReadOnlyList<string> Required { get; } = [Case, ReadingFields.ExaminationDate, ReadingFields.Part, ReadingFields.Level];

    /// <summary>The columns of which a row needs at least one.</summary>
    public static IReadOnlyList<string> Measurements { get; } =
    [
        ReadingFields.LigamentArea,
        ReadingFields.LesionArea,
        ReadingFields.Thickness,
        ReadingFields.Width,
        ReadingFields.EchogenicityGrade,
        ReadingFields.FibreAlignmentGrade,
        ReadingFields.LesionPercent,
    ];

    /// <summary>The required columns that a sheet lacks; a zone with its scheme stands for the level.</summary>
    /// <param name="has">Whether the sheet has a column.</param>
    public static IEnumerable<string> MissingFrom(Func<string, bool> has)
    {
        ArgumentNullException.ThrowIfNull(has);
        return Required
            .Where(column => !has(column))
            .Select(column =>
                !string.Equals(column, ReadingFields.Level, StringComparison.Ordinal) || !has(ReadingFields.Zone) ? column
                : has(ReadingFields.ZoneScheme) ? null
                : ReadingFields.ZoneScheme
            )
            .OfType<string>();
    }

    /// <summary>The column that a heading names, read without regard to case, space, hyphen and underscore; null for none.</summary>
    public static string? Find(string heading) => Folded.GetValueOrDefault(FoldedText.Of(heading));

    /// <summary>The place of a column in <see cref="All"/>.</summary>
    public static int IndexOf(string column) => Indices[column];
}
