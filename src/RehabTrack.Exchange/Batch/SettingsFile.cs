using System.Globalization;
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
            return new SettingsReading(
                null,
                [new Problem("", "settings-not-json", ((exception.LineNumber ?? 0) + 1).ToString(CultureInfo.InvariantCulture))]
            );
        }
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
        string[] groups = [.. SettingRanges.All.Select(range => range.Name.Split('.')[0]).Distinct(StringComparer.Ordinal)];
        foreach (JsonProperty group in root.EnumerateObject())
        {
            if (!groups.Contains(group.Name, StringComparer.Ordinal) || group.Value.ValueKind != JsonValueKind.Object)
            {
                problems.Add(new(group.Name, "setting-group-unknown", group.Name, string.Join(", ", groups)));
                continue;
            }

            foreach (JsonProperty setting in group.Value.EnumerateObject())
            {
                settings = Apply(problems, seen, settings, group.Name, setting);
            }
        }

        return problems.Count == 0 ? new SettingsReading(settings, []) : new SettingsReading(null, problems);
    }

    /// <summary>Sets a number; a setting that cannot be set stays as it is, and says why.</summary>
    private static AnalysisSettings Apply(
        List<Problem> problems,
        HashSet<string> seen,
        AnalysisSettings settings,
        string group,
        JsonProperty setting
    )
    {
        string name = $"{group}.{setting.Name}";
        if (SettingRanges.Of(name) is not { } range)
        {
            string known = string.Join(
                ", ",
                SettingRanges.All.Select(one => one.Name).Where(one => one.StartsWith($"{group}.", StringComparison.Ordinal))
            );
            problems.Add(new(name, "setting-unknown", name, known));
            return settings;
        }

        if (!seen.Add(name))
        {
            problems.Add(new(name, "setting-twice", name));
            return settings;
        }

        if (setting.Value.ValueKind != JsonValueKind.Number || !setting.Value.TryGetDouble(out double value) || !range.Holds(value))
        {
            problems.Add(SettingRanges.ProblemOf(range, setting.Value.GetRawText()));
            return settings;
        }

        return SettingRanges.With(settings, name, value);
    }
}
