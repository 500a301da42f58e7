using System.Globalization;
using System.Reflection;
using System.Text.Json;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Batch;

/// <summary>
/// Reads the settings file of the batch analysis: a JSON object of the groups <c>error</c>, <c>linking</c> and <c>trend</c>, each an object
/// of numbers. What is not named keeps its default. The names and their ranges stand in <c>shared/setting-ranges.json</c>.
/// </summary>
public static class SettingsFile
{
    private static readonly IReadOnlyDictionary<string, (double Lowest, double Highest)> Ranges = ReadRanges();

    /// <summary>The names that a file may use, as <c>group.name</c>.</summary>
    public static IEnumerable<string> Names => Ranges.Keys;

    /// <summary>Reads a file.</summary>
    /// <param name="json">Its bytes, UTF-8.</param>
    /// <returns>The settings, or all that is wrong with them.</returns>
    public static SettingsReading Read(ReadOnlyMemory<byte> json)
    {
        ReadOnlyMemory<byte> text = json.Span.StartsWith("\uFEFF"u8) ? json[3..] : json;
        try
        {
            using JsonDocument document = JsonDocument.Parse(
                text,
                new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true }
            );
            return Read(document.RootElement);
        }
        catch (JsonException exception)
        {
            return new SettingsReading(null, [new Problem("", "settings-not-json", Text((exception.LineNumber ?? 0) + 1))]);
        }
    }

    /// <summary>The value of a setting.</summary>
    /// <param name="settings">The settings.</param>
    /// <param name="name">One of <see cref="Names"/>.</param>
    public static double ValueOf(AnalysisSettings settings, string name)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(name);
        string[] parts = name.Split('.');
        object group = PropertyOf(settings, parts[0]).GetValue(settings)!;
        return Convert.ToDouble(PropertyOf(group, parts[1]).GetValue(group), CultureInfo.InvariantCulture);
    }

    private static SettingsReading Read(JsonElement root)
    {
        if (root.ValueKind != JsonValueKind.Object)
        {
            return new SettingsReading(null, [new Problem("", "settings-not-json", "1")]);
        }

        List<Problem> problems = [];
        AnalysisSettings settings = new();
        HashSet<string> seen = new(StringComparer.Ordinal);
        string[] groups = [.. Ranges.Keys.Select(name => name.Split('.')[0]).Distinct(StringComparer.Ordinal)];
        foreach (JsonProperty group in root.EnumerateObject())
        {
            if (!groups.Contains(group.Name, StringComparer.Ordinal) || group.Value.ValueKind != JsonValueKind.Object)
            {
                problems.Add(new(group.Name, "setting-group-unknown", group.Name, string.Join(", ", groups)));
                continue;
            }

            object target = PropertyOf(settings, group.Name).GetValue(settings)!;
            foreach (JsonProperty setting in group.Value.EnumerateObject())
            {
                Apply(problems, seen, target, group.Name, setting);
            }
        }

        return problems.Count == 0 ? new SettingsReading(settings, []) : new SettingsReading(null, problems);
    }

    /// <summary>Sets a number; the settings are fresh here and nobody else holds them yet.</summary>
    private static void Apply(List<Problem> problems, HashSet<string> seen, object target, string group, JsonProperty setting)
    {
        string name = $"{group}.{setting.Name}";
        if (!Ranges.TryGetValue(name, out (double Lowest, double Highest) range))
        {
            string known = string.Join(", ", Ranges.Keys.Where(key => key.StartsWith($"{group}.", StringComparison.Ordinal)));
            problems.Add(new(name, "setting-unknown", name, known));
            return;
        }

        if (!seen.Add(name))
        {
            problems.Add(new(name, "setting-twice", name));
            return;
        }

        PropertyInfo property = PropertyOf(target, setting.Name);
        bool whole = property.PropertyType == typeof(int);
        if (
            setting.Value.ValueKind != JsonValueKind.Number
            || !setting.Value.TryGetDouble(out double value)
            || !(value >= range.Lowest && value <= range.Highest)
            || (whole && value != Math.Floor(value))
        )
        {
            problems.Add(
                new(
                    name,
                    whole ? "setting-not-whole-in-range" : "setting-not-in-range",
                    name,
                    setting.Value.GetRawText(),
                    Text(range.Lowest),
                    Text(range.Highest)
                )
            );
            return;
        }

        property.SetValue(target, Convert.ChangeType(value, property.PropertyType, CultureInfo.InvariantCulture));
    }

    private static PropertyInfo PropertyOf(object target, string name) =>
        target.GetType().GetProperty($"{char.ToUpperInvariant(name[0])}{name[1..]}")
        ?? throw new InvalidOperationException($"The setting {name} of shared/setting-ranges.json does not exist.");

    private static Dictionary<string, (double Lowest, double Highest)> ReadRanges()
    {
        using JsonDocument document = ReferenceTable.Parse("setting-ranges");
        return document
            .RootElement.GetProperty("rows")
            .EnumerateArray()
            .ToDictionary(
                row => row.GetProperty("name").GetString()!,
                row => (row.GetProperty("lowest").GetDouble(), row.GetProperty("highest").GetDouble()),
                StringComparer.Ordinal
            );
    }

    private static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);
}
