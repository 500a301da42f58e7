using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Exams;

/// <summary>The codes of stances, roles and grading scales in files.</summary>
public static class ExamCodes
{
    private const string EchogenicityPrefix = "echogenicity-";
    private const string FibreAlignmentPrefix = "fibre-alignment-";

    /// <summary>The word for a lesion that is there and cannot be outlined.</summary>
    public const string Diffuse = "diffuse";

    /// <summary><c>weight-bearing</c>, <c>non-weight-bearing</c>.</summary>
    public static CodeTable<Stance> Stances { get; } = CodeTable<Stance>.Load("stance");

    /// <summary><c>normal-above</c>, <c>worst</c>, <c>normal-below</c>; empty for none.</summary>
    public static CodeTable<ReadingRole> Roles { get; } = CodeTable<ReadingRole>.Load("role");

    /// <summary><c>sound</c>, <c>lesion</c>; empty when not recorded.</summary>
    public static CodeTable<OtherLimb> OtherLimbs { get; } = CodeTable<OtherLimb>.Load("otherLimb");

    /// <summary>The echogenicity scales by their short code: <c>0-3</c>, <c>0-4</c>, <c>1-4</c>.</summary>
    public static IReadOnlyDictionary<string, GradeScale> EchogenicityScales { get; } = ScalesOf(EchogenicityPrefix);

    /// <summary>The fibre-alignment scales by their short code: <c>0-3</c>.</summary>
    public static IReadOnlyDictionary<string, GradeScale> FibreAlignmentScales { get; } = ScalesOf(FibreAlignmentPrefix);

    /// <summary>The short code of a scale within its kind, for example <c>0-3</c>.</summary>
    /// <param name="scale">The scale.</param>
    public static string CodeOf(GradeScale scale)
    {
        ArgumentNullException.ThrowIfNull(scale);
        return scale
            .Id.Replace(EchogenicityPrefix, "", StringComparison.Ordinal)
            .Replace(FibreAlignmentPrefix, "", StringComparison.Ordinal);
    }

    private static Dictionary<string, GradeScale> ScalesOf(string prefix) =>
        GradeScales
            .All.Where(scale => scale.Id.StartsWith(prefix, StringComparison.Ordinal))
            .ToDictionary(scale => scale.Id[prefix.Length..], StringComparer.Ordinal);
}
