using System.Globalization;
using System.Reflection;
using System.Text.Json;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Analysis;

/// <summary>Which settings of the analysis can be changed, and within what; the ranges stand in <c>shared/setting-ranges.json</c>.</summary>
public static class SettingRanges
{
    /// <summary>All of them, in the order of the table.</summary>
    public static IReadOnlyList<SettingRange> All { get; } = Read();

    private static readonly Dictionary<string, SettingRange> ByName = All.ToDictionary(range => range.Name, StringComparer.Ordinal);

    /// <summary>The range of a setting; null when there is no such setting.</summary>
    /// <param name="name">Its group and name, as <c>trend.windowExaminations</c>.</param>
    public static SettingRange? Of(string name) => ByName.GetValueOrDefault(name);

    /// <summary>The value of a setting, in its unit.</summary>
    /// <param name="settings">The settings.</param>
    /// <param name="name">One of <see cref="All"/>.</param>
    public static double ValueOf(AnalysisSettings settings, string name)
    {
        ArgumentNullException.ThrowIfNull(settings);
        (object group, PropertyInfo property) = Find(settings, name);
        return Convert.ToDouble(property.GetValue(group), CultureInfo.InvariantCulture);
    }

    /// <summary>The settings with another value of one of them; those given stay as they are.</summary>
    /// <param name="settings">The settings.</param>
    /// <param name="name">One of <see cref="All"/>.</param>
    /// <param name="value">The value, in its unit and range.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside the range.</exception>
    public static AnalysisSettings With(AnalysisSettings settings, string name, double value)
    {
        ArgumentNullException.ThrowIfNull(settings);
        if (Of(name) is not { } range || !range.Holds(value))
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, $"The setting {name} does not take it.");
        }

        AnalysisSettings copy = settings with
        {
            Error = settings.Error with { },
            Linking = settings.Linking with { },
            Trend = settings.Trend with { },
        };
        (object group, PropertyInfo property) = Find(copy, name);
        property.SetValue(group, Convert.ChangeType(value, property.PropertyType, CultureInfo.InvariantCulture));
        return copy;
    }

    /// <summary>What is outside its range; each problem has the setting's name, the value and both ends.</summary>
    /// <param name="settings">The settings.</param>
    public static IReadOnlyList<Problem> Check(AnalysisSettings settings) =>
        [
            .. All.Select(range => (Range: range, Value: ValueOf(settings, range.Name)))
                .Where(pair => !pair.Range.Holds(pair.Value))
                .Select(pair => ProblemOf(pair.Range, Text(pair.Value))),
        ];

    /// <summary>The problem of a value that a setting does not take.</summary>
    /// <param name="range">The setting.</param>
    /// <param name="value">The value as it was written.</param>
    public static Problem ProblemOf(SettingRange range, string value)
    {
        ArgumentNullException.ThrowIfNull(range);
        return new Problem(
            range.Name,
            range.IsWhole ? "setting-not-whole-in-range" : "setting-not-in-range",
            range.Name,
            value,
            Text(range.Lowest),
            Text(range.Highest)
        );
    }

    private static SettingRange[] Read()
    {
        using JsonDocument document = ReferenceTable.Parse("setting-ranges");
        AnalysisSettings usual = new();
        return
        [
            .. document
                .RootElement.GetProperty("rows")
                .EnumerateArray()
                .Select(row => (Name: row.GetProperty("name").GetString()!, Row: row))
                .Select(pair => new SettingRange(
                    pair.Name,
                    pair.Row.GetProperty("lowest").GetDouble(),
                    pair.Row.GetProperty("highest").GetDouble(),
                    Find(usual, pair.Name).Property.PropertyType == typeof(int)
                )),
        ];
    }

    private static (object Group, PropertyInfo Property) Find(AnalysisSettings settings, string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        string[] parts = name.Split('.');
        object group = PropertyOf(settings, parts[0]).GetValue(settings)!;
        return (group, PropertyOf(group, parts[1]));
    }

    private static PropertyInfo PropertyOf(object target, string name) =>
        target.GetType().GetProperty($"{char.ToUpperInvariant(name[0])}{name[1..]}")
        ?? throw new InvalidOperationException($"The setting {name} of shared/setting-ranges.json does not exist.");

    private static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);
}
