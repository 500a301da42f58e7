using System.Text.Json;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Anatomy;

/// <summary>The zone schemes of <c>shared/zones.json</c>: ECM 320.</summary>
public static class ZoneSchemes
{
    private static readonly Dictionary<ZoneScheme, Row> Rows = Read();

    /// <summary>The codes of the schemes in files, in the order of the table: <c>fore-7</c>, <c>hind-7</c>, <c>hind-9</c>.</summary>
    public static IReadOnlyCollection<string> Codes { get; } = [.. Rows.Values.Select(row => row.Code)];

    /// <summary>The code of a scheme in files.</summary>
    /// <param name="scheme">The scheme.</param>
    public static string CodeOf(ZoneScheme scheme) => Rows[scheme].Code;

    /// <summary>The scheme with this code, read without regard to case, with space, hyphen and underscore alike; null when there is none.</summary>
    /// <param name="text">The text of a cell or field.</param>
    public static ZoneScheme? Find(string text)
    {
        string folded = FoldedText.Of(text);
        foreach ((ZoneScheme scheme, Row row) in Rows)
        {
            if (string.Equals(FoldedText.Of(row.Code), folded, StringComparison.Ordinal))
            {
                return scheme;
            }
        }

        return null;
    }

    /// <summary>The schemes that fit the limb, in the order of the table; all of them when the limb is not known.</summary>
    /// <param name="limb">The limb.</param>
    public static IEnumerable<ZoneScheme> Of(Limb limb) => Rows.Keys.Where(scheme => Fits(scheme, limb));

    /// <summary>Whether the scheme is one of this limb; true when the limb is not known.</summary>
    /// <param name="scheme">The scheme.</param>
    /// <param name="limb">The limb.</param>
    public static bool Fits(ZoneScheme scheme, Limb limb) => limb == Limb.Unknown || Rows[scheme].IsHind == AnatomyRules.IsHind(limb);

    /// <summary>Where the first zone begins.</summary>
    /// <param name="scheme">The scheme.</param>
    public static Landmark LandmarkOf(ZoneScheme scheme) => Rows[scheme].Landmark;

    /// <summary>The names of the zones from the top down.</summary>
    /// <param name="scheme">The scheme.</param>
    public static IReadOnlyList<string> NamesOf(ZoneScheme scheme) => Rows[scheme].Names;

    /// <summary>The zone with this name, read without regard to case and spaces; null when the scheme has none.</summary>
    /// <param name="scheme">The scheme.</param>
    /// <param name="name">The name as entered, for example <c>2b</c>.</param>
    public static Zone? Find(ZoneScheme scheme, string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        string bare = name.Replace(" ", "", StringComparison.Ordinal);
        int ordinal = Array.FindIndex(Rows[scheme].Names, known => string.Equals(known, bare, StringComparison.OrdinalIgnoreCase));
        return ordinal < 0 ? null : new Zone(scheme, ordinal);
    }

    /// <summary>
    /// How far apart the linker sets neighbouring zones on its own scale, cm: for order and linking only, never shown and never a length
    /// (after Schade 2023, Animals 13:1411).
    /// </summary>
    /// <param name="scheme">The scheme.</param>
    internal static double SpacingOf(ZoneScheme scheme) => Rows[scheme].Spacing;

    private static Dictionary<ZoneScheme, Row> Read()
    {
        using JsonDocument document = ReferenceTable.Parse("zones");
        return document
            .RootElement.GetProperty("rows")
            .EnumerateArray()
            .ToDictionary(
                row => Enum.Parse<ZoneScheme>(row.GetProperty("member").GetString()!),
                row => new Row(
                    row.GetProperty("code").GetString()!,
                    row.GetProperty("limb").ValueEquals("hind"),
                    Enum.Parse<Landmark>(row.GetProperty("landmark").GetString()!),
                    row.GetProperty("zones").GetString()!.Split(' '),
                    row.GetProperty("spacing").GetDouble()
                )
            );
    }

    private sealed record Row(string Code, bool IsHind, Landmark Landmark, string[] Names, double Spacing);
}
