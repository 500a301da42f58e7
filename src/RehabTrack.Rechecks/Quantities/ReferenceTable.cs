using System.Text.Json;

namespace RehabTrack.Rechecks.Quantities;

/// <summary>
/// A reference table of <c>shared/</c>, compiled into this assembly: named values with unit and source. Thresholds live there once.
/// </summary>
public sealed class ReferenceTable
{
    private readonly IReadOnlyDictionary<string, ReferenceValue> _values;

    private ReferenceTable(string name, int version, IReadOnlyDictionary<string, ReferenceValue> values)
    {
        Name = name;
        Version = version;
        _values = values;
    }

    /// <summary>The table's name, which is its file name without ending.</summary>
    public string Name { get; }

    /// <summary>The table's version; it rises with every change of a row.</summary>
    public int Version { get; }

    /// <summary>The rows in the order of the file.</summary>
    public IEnumerable<ReferenceValue> Rows => _values.Values;

    /// <summary>Reads a table.</summary>
    /// <param name="name">File name without ending, for example <c>measurement-error</c>.</param>
    /// <exception cref="InvalidOperationException">There is no such table, or it is malformed: a broken build.</exception>
    public static ReferenceTable Load(string name)
    {
        using JsonDocument document = Parse(name);
        JsonElement root = document.RootElement;
        Dictionary<string, ReferenceValue> values = new(StringComparer.Ordinal);
        foreach (JsonElement row in root.GetProperty("rows").EnumerateArray())
        {
            ReferenceValue value = new(
                row.GetProperty("name").GetString()!,
                row.GetProperty("value").GetDouble(),
                row.GetProperty("unit").GetString()!,
                row.GetProperty("source").GetString()!
            );
            values.Add(value.Name, value);
        }

        return new ReferenceTable(name, root.GetProperty("version").GetInt32(), values);
    }

    /// <summary>The raw table as JSON, for tables whose rows are not single numbers. The caller disposes it.</summary>
    /// <param name="name">File name without ending.</param>
    /// <exception cref="InvalidOperationException">There is no such table: a broken build.</exception>
    public static JsonDocument Parse(string name)
    {
        using Stream stream =
            typeof(ReferenceTable).Assembly.GetManifestResourceStream($"shared/{name}.json")
            ?? throw new InvalidOperationException($"The reference table {name} is not part of this build.");
        return JsonDocument.Parse(stream);
    }

    /// <summary>The value of a row.</summary>
    /// <param name="row">The row's name.</param>
    /// <exception cref="InvalidOperationException">The table has no such row: a broken build.</exception>
    public double this[string row] =>
        _values.TryGetValue(row, out ReferenceValue? value)
            ? value.Value
            : throw new InvalidOperationException($"The reference table {Name} has no row {row}.");
}
