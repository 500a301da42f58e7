using System.Globalization;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Exams;

/// <summary>
/// What one reading must keep to, alone: for the import of files and for entry on a page alike. The limits stand in
/// <c>shared/limits.json</c>.
/// </summary>
public static class ReadingRules
{
    private static readonly ReferenceTable Limits = ReferenceTable.Load("limits");
    private static readonly double LowestLevelCm = Limits["lowestLevelCm"];
    private static readonly double HighestLevelCm = Limits["highestLevelCm"];
    private static readonly double LargestAreaCm2 = Limits["largestAreaCm2"];
    private static readonly double LargestPercent = Limits["largestPercent"];
    private static readonly double LargestThicknessCm = Limits["largestThicknessCm"];
    private static readonly double LargestWidthCm = Limits["largestWidthCm"];
    private static readonly double PercentTolerance = Limits["percentTolerance"];

    /// <summary>All that is wrong with a reading, in the order of its fields; empty when it can be kept.</summary>
    /// <param name="draft">The reading as entered.</param>
    public static IReadOnlyList<Problem> Check(ReadingDraft draft)
    {
        ArgumentNullException.ThrowIfNull(draft);
        List<Problem> problems = [];
        if (draft.Part is null)
        {
            problems.Add(new(ReadingFields.Part, "missing"));
        }

        OneLevel(problems, draft);
        Between(problems, ReadingFields.Level, "level-out-of-range", draft.LevelCm, LowestLevelCm, HighestLevelCm);
        Size(problems, ReadingFields.LigamentArea, "area", draft.LigamentAreaCm2, LargestAreaCm2, zeroAllowed: false);
        Size(problems, ReadingFields.LesionArea, "area", draft.LesionAreaCm2, LargestAreaCm2, zeroAllowed: true);
        LesionWithinLigament(problems, draft);
        Between(problems, ReadingFields.LesionPercent, "percent-out-of-range", draft.LesionPercent, 0, LargestPercent);
        PercentFitsAreas(problems, draft);
        Size(problems, ReadingFields.Thickness, "length", draft.ThicknessCm, LargestThicknessCm, zeroAllowed: false);
        Size(problems, ReadingFields.Width, "length", draft.WidthCm, LargestWidthCm, zeroAllowed: false);
        Size(problems, ReadingFields.OtherLimbLigamentArea, "area", draft.OtherLimbLigamentAreaCm2, LargestAreaCm2, zeroAllowed: false);
        Size(problems, ReadingFields.OtherLimbThickness, "length", draft.OtherLimbThicknessCm, LargestThicknessCm, zeroAllowed: false);
        OnScale(problems, ReadingFields.EchogenicityGrade, draft.EchogenicityGrade, draft.EchogenicityScale);
        OnScale(problems, ReadingFields.FibreAlignmentGrade, draft.FibreAlignmentGrade, draft.FibreAlignmentScale);
        if (!draft.HasMeasurement)
        {
            problems.Add(new(ReadingFields.LigamentArea, "no-measurement"));
        }

        return problems;
    }

    /// <summary>What is worth a second look and does not forbid to keep the reading.</summary>
    /// <param name="draft">The reading as entered.</param>
    public static IReadOnlyList<Problem> Cautions(ReadingDraft draft)
    {
        ArgumentNullException.ThrowIfNull(draft);
        return
            draft.Role is ReadingRole.NormalAbove or ReadingRole.NormalBelow
            && (draft.LesionAreaCm2 > 0 || draft.LesionPercent > 0 || draft.LesionIsDiffuse)
            ? [new(ReadingFields.Role, "normal-with-lesion")]
            : [];
    }

    /// <summary>Makes the reading.</summary>
    /// <param name="id">Its identity, unique within the case.</param>
    /// <param name="draft">A draft without problems.</param>
    /// <exception cref="ArgumentException">The draft has problems.</exception>
    public static Reading Make(string id, ReadingDraft draft)
    {
        ArgumentNullException.ThrowIfNull(draft);
        if (Check(draft) is [var first, ..])
        {
            throw new ArgumentException($"A reading with a problem ({first.Field}: {first.Code}) cannot be made.", nameof(draft));
        }

        return new Reading
        {
            Id = id,
            Part = draft.Part!.Value,
            Level = draft.Level!.Value,
            Plane = draft.Plane,
            Lesion = draft.Lesion,
            Role = draft.Role,
            LigamentArea = draft.LigamentAreaCm2 is { } ligament ? new SquareCentimetres(ligament) : null,
            LesionArea =
                draft.LesionIsDiffuse ? LesionArea.Diffuse
                : draft.LesionAreaCm2 is { } lesion ? LesionArea.Measured(new SquareCentimetres(lesion))
                : LesionArea.Unknown,
            LesionPercent = draft.LesionPercent is { } percent ? new Percent(percent) : null,
            Thickness = draft.ThicknessCm is { } thickness ? new Centimetres(thickness) : null,
            Width = draft.WidthCm is { } width ? new Centimetres(width) : null,
            OtherLimbLigamentArea = draft.OtherLimbLigamentAreaCm2 is { } otherArea ? new SquareCentimetres(otherArea) : null,
            OtherLimbThickness = draft.OtherLimbThicknessCm is { } otherThickness ? new Centimetres(otherThickness) : null,
            Echogenicity = draft.EchogenicityGrade is { } echo ? new Grade(draft.EchogenicityScale, (int)echo) : null,
            FibreAlignment = draft.FibreAlignmentGrade is { } fibre ? new Grade(draft.FibreAlignmentScale, (int)fibre) : null,
            Measurer = draft.Measurer,
            Repeat = draft.Repeat,
            Note = draft.Note,
        };
    }

    private static void OneLevel(List<Problem> problems, ReadingDraft draft)
    {
        if (draft.ZoneScheme is not { } scheme)
        {
            if (draft.Zone is not null)
            {
                problems.Add(new(ReadingFields.Zone, "zone-without-scheme", draft.Zone, string.Join(", ", ZoneSchemes.Codes)));
            }
            else if (draft.LevelCm is null)
            {
                problems.Add(new(ReadingFields.Level, "missing"));
            }

            return;
        }

        if (draft.LevelCm is { } tape)
        {
            problems.Add(new(ReadingFields.Level, "level-and-zones", Text(tape)));
        }

        if (draft.Zone is null)
        {
            problems.Add(new(ReadingFields.Zone, "zone-missing", NamesOf(scheme)));
        }
        else if (ZoneSchemes.Find(scheme, draft.Zone) is null)
        {
            problems.Add(new(ReadingFields.Zone, "zone-unknown", draft.Zone, NamesOf(scheme)));
        }
    }

    private static string NamesOf(ZoneScheme scheme) => string.Join(", ", ZoneSchemes.NamesOf(scheme));

    private static void LesionWithinLigament(List<Problem> problems, ReadingDraft draft)
    {
        if (draft.LesionIsDiffuse && draft.LesionAreaCm2 is not null)
        {
            problems.Add(new(ReadingFields.LesionArea, "diffuse-with-area"));
        }

        // A ligament area that is none has its own message: a second one that calls the lesion too large would mislead.
        if (draft.LigamentAreaCm2 > 0 && draft.LesionAreaCm2 > draft.LigamentAreaCm2)
        {
            problems.Add(
                new(
                    ReadingFields.LesionArea,
                    "lesion-larger-than-ligament",
                    Text(draft.LesionAreaCm2.Value),
                    Text(draft.LigamentAreaCm2.Value)
                )
            );
        }
    }

    private static void PercentFitsAreas(List<Problem> problems, ReadingDraft draft)
    {
        if (draft is not { LesionPercent: { } percent, LesionAreaCm2: { } lesion and >= 0 })
        {
            return;
        }

        double? computed =
            lesion == 0 ? 0
            : draft.LigamentAreaCm2 > 0 ? 100 * lesion / draft.LigamentAreaCm2
            : null;
        if (computed is { } share && double.IsFinite(share) && Math.Abs(share - percent) > PercentTolerance)
        {
            problems.Add(
                new(
                    ReadingFields.LesionPercent,
                    "percent-contradicts-areas",
                    Text(percent),
                    share.ToString("0.#", CultureInfo.InvariantCulture)
                )
            );
        }
    }

    private static void Size(List<Problem> problems, string field, string kind, double? value, double largest, bool zeroAllowed)
    {
        if (value is not { } size)
        {
            return;
        }

        if (!(size >= 0) || (size == 0 && !zeroAllowed))
        {
            problems.Add(new(field, size == 0 ? $"{kind}-zero" : $"{kind}-negative", Text(size)));
        }
        else if (size > largest)
        {
            problems.Add(new(field, $"{kind}-too-large", Text(size), Text(largest)));
        }
    }

    private static void Between(List<Problem> problems, string field, string code, double? value, double lowest, double highest)
    {
        if (value is { } given && !(given >= lowest && given <= highest))
        {
            problems.Add(new(field, code, Text(given), Text(lowest), Text(highest)));
        }
    }

    private static void OnScale(List<Problem> problems, string field, double? grade, GradeScale scale)
    {
        if (grade is not { } given)
        {
            return;
        }

        if (given != Math.Floor(given))
        {
            problems.Add(new(field, "grade-not-whole", Text(given)));
        }
        else if (!(given >= scale.Lowest && given <= scale.Highest))
        {
            problems.Add(new(field, "grade-outside-scale", Text(given), ExamCodes.CodeOf(scale), Text(scale.Lowest), Text(scale.Highest)));
        }
    }

    private static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);
}
