using System.Text.Json;

namespace RehabTrack.Rechecks.Quantities;

/// <summary>The grading scales of <c>shared/grading-scales.json</c>.</summary>
public static class GradeScales
{
    private static readonly IReadOnlyDictionary<string, GradeScale> ById = Read();

    /// <summary>All scales, in the order of the table.</summary>
    public static IEnumerable<GradeScale> All => ById.Values;

    /// <summary>Echogenicity 0–3, the default: 0 normal, 3 anechoic (ECM 330).</summary>
    public static GradeScale Echogenicity0To3 => ById["echogenicity-0-3"];

    /// <summary>Echogenicity 0–4: 3 mostly hypoechoic, 4 anechoic (ECM 330).</summary>
    public static GradeScale Echogenicity0To4 => ById["echogenicity-0-4"];

    /// <summary>The older echogenicity type 1–4 (from memory).</summary>
    public static GradeScale Echogenicity1To4 => ById["echogenicity-1-4"];

    /// <summary>Fibre alignment 0–3 by share of parallel fibres (from memory: Genovese and Rantanen; Reef 1998).</summary>
    public static GradeScale FibreAlignment0To3 => ById["fibre-alignment-0-3"];

    /// <summary>The scale with this id; null when there is none.</summary>
    public static GradeScale? Find(string id) => ById.GetValueOrDefault(id);

    private static Dictionary<string, GradeScale> Read()
    {
        using JsonDocument document = ReferenceTable.Parse("grading-scales");
        Dictionary<string, GradeScale> scales = new(StringComparer.Ordinal);
        foreach (JsonElement row in document.RootElement.GetProperty("rows").EnumerateArray())
        {
            GradeScale scale = new(
                row.GetProperty("name").GetString()!,
                row.GetProperty("lowest").GetInt32(),
                row.GetProperty("highest").GetInt32()
            );
            scales.Add(scale.Id, scale);
        }

        return scales;
    }
}
