using System.Text.Json;

namespace RehabTrack.Records.History;

/// <summary>Reads the fields out of a line of the history.</summary>
internal static class ChangeFields
{
    private const string Readings = "readings";
    private static readonly string[] PlaceFields = ["part", "levelCm", "zone"];

    /// <summary>All of them; none of a line whose words were erased.</summary>
    public static IReadOnlyList<FieldChange> Of(string? beforeJson, string afterJson)
    {
        if (afterJson.Length == 0)
        {
            return [];
        }

        using JsonDocument? before = beforeJson is null ? null : JsonDocument.Parse(beforeJson);
        using JsonDocument after = JsonDocument.Parse(afterJson);
        List<FieldChange> changes = [];
        Compare(changes, "", before?.RootElement, after.RootElement);
        CompareReadings(changes, Member(before?.RootElement, Readings), Member(after.RootElement, Readings), _ => true);
        return changes;
    }

    /// <summary>The fields of some readings alone.</summary>
    public static IReadOnlyList<FieldChange> OfReadings(string? beforeJson, string afterJson, IReadOnlySet<Guid> readings)
    {
        List<FieldChange> changes = [];
        if (afterJson.Length > 0)
        {
            using JsonDocument? before = beforeJson is null ? null : JsonDocument.Parse(beforeJson);
            using JsonDocument after = JsonDocument.Parse(afterJson);
            CompareReadings(
                changes,
                Member(before?.RootElement, Readings),
                Member(after.RootElement, Readings),
                id => Guid.TryParseExact(id, "D", out Guid reading) && readings.Contains(reading)
            );
        }

        return changes;
    }

    private static void CompareReadings(List<FieldChange> changes, JsonElement? before, JsonElement? after, Func<string, bool> isWanted)
    {
        foreach (string id in Names(before).Union(Names(after), StringComparer.Ordinal).Where(isWanted))
        {
            JsonElement? was = Member(before, id);
            JsonElement? isNow = Member(after, id);
            JsonElement place = (was ?? isNow)!.Value;
            string name = string.Join(' ', PlaceFields.Select(field => Text(Member(place, field))).OfType<string>());
            Compare(changes, $"{Readings}[{name}].", was, isNow);
        }
    }

    private static void Compare(List<FieldChange> changes, string path, JsonElement? before, JsonElement? after)
    {
        foreach (string field in Names(before).Union(Names(after), StringComparer.Ordinal))
        {
            if (path.Length == 0 && field == Readings)
            {
                continue;
            }

            string? was = Text(Member(before, field));
            string? isNow = Text(Member(after, field));
            if (was != isNow)
            {
                changes.Add(new FieldChange(path + field, was, isNow));
            }
        }
    }

    private static IEnumerable<string> Names(JsonElement? element) =>
        element is { ValueKind: JsonValueKind.Object } members ? members.EnumerateObject().Select(member => member.Name) : [];

    private static JsonElement? Member(JsonElement? element, string name) =>
        element is { ValueKind: JsonValueKind.Object } members && members.TryGetProperty(name, out JsonElement value) ? value : null;

    private static string? Text(JsonElement? value) =>
        value switch
        {
            null or { ValueKind: JsonValueKind.Null or JsonValueKind.Undefined } => null,
            { ValueKind: JsonValueKind.String } text => text.GetString(),
            { } other => other.GetRawText(),
        };
}
