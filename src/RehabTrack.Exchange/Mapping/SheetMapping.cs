using System.Text.Json;
using System.Text.Json.Serialization;
using RehabTrack.Exchange.Rows;

namespace RehabTrack.Exchange.Mapping;

/// <summary>What the columns of a foreign sheet mean. It is kept as JSON under the fingerprint of the headings.</summary>
public sealed record SheetMapping
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectNullableAnnotations = true,
    };

    /// <summary>The columns whose numbers have a unit that may differ.</summary>
    public static IReadOnlyList<string> ColumnsWithUnit => SheetColumns.WithUnit;

    /// <summary>The columns that are the same for all examinations of a row.</summary>
    public IReadOnlyList<MappedColumn> Columns { get; init; } = [];

    /// <summary>Values for columns that the sheet does not have, the same in every row.</summary>
    public IReadOnlyDictionary<string, string> Constants { get; init; } = new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>A group of columns an examination; empty in a sheet with a row an examination.</summary>
    public IReadOnlyList<MappedGroup> Groups { get; init; } = [];

    /// <summary>In which order dates are written, in cells and in the headings of groups.</summary>
    public DateOrder DateOrder { get; init; }

    /// <summary>Whether the numbers of a column of the import sheet are an area, cm².</summary>
    public static bool IsArea(string column)
    {
        ArgumentNullException.ThrowIfNull(column);
        return column.EndsWith("_cm2", StringComparison.Ordinal);
    }

    /// <summary>The mapping as text, to be remembered.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, Json);

    /// <summary>A remembered mapping; null when the text is none.</summary>
    /// <param name="json">What <see cref="ToJson"/> gave.</param>
    public static SheetMapping? FromJson(string json)
    {
        try
        {
            return JsonSerializer.Deserialize<SheetMapping>(json, Json);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
