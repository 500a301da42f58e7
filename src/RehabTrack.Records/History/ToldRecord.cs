using System.Text.Json;

namespace RehabTrack.Records.History;

/// <summary>What the lines of the trail told of one record, the latest of each field; nothing of what was erased.</summary>
internal sealed class ToldRecord
{
    private const string ReadingsField = "readings";

    /// <summary>Each field as the JSON in which it was told.</summary>
    public Dictionary<string, string> Fields { get; } = new(StringComparer.Ordinal);

    /// <summary>The fields of each reading of an examination, by its id.</summary>
    public Dictionary<Guid, Dictionary<string, string>> Readings { get; } = [];

    /// <summary>Takes the next line; one whose words were erased takes what was known with it.</summary>
    public void Take(string? beforeJson, string afterJson)
    {
        if (afterJson.Length == 0)
        {
            Fields.Clear();
            Readings.Clear();
            return;
        }

        using JsonDocument? before = beforeJson is null ? null : JsonDocument.Parse(beforeJson);
        using JsonDocument after = JsonDocument.Parse(afterJson);
        Dictionary<string, JsonElement> readings = ReadingsOf(after.RootElement)
            .ToDictionary(reading => reading.Name, reading => reading.Value, StringComparer.Ordinal);
        foreach (JsonProperty field in after.RootElement.EnumerateObject().Where(field => field.Name != ReadingsField))
        {
            Fields[field.Name] = field.Value.GetRawText();
        }

        foreach ((string id, JsonElement told) in readings)
        {
            TakeReading(Guid.Parse(id), told);
        }

        // A reading that was taken out is told as it was, and not as it is.
        if (before is not null)
        {
            foreach (JsonProperty gone in ReadingsOf(before.RootElement).Where(reading => !readings.ContainsKey(reading.Name)))
            {
                Readings.Remove(Guid.Parse(gone.Name));
            }
        }
    }

    private void TakeReading(Guid id, JsonElement told)
    {
        if (!Readings.TryGetValue(id, out Dictionary<string, string>? fields))
        {
            fields = new(StringComparer.Ordinal);
            Readings.Add(id, fields);
        }

        foreach (JsonProperty field in told.EnumerateObject())
        {
            fields[field.Name] = field.Value.GetRawText();
        }
    }

    private static IEnumerable<JsonProperty> ReadingsOf(JsonElement line) =>
        line.TryGetProperty(ReadingsField, out JsonElement readings) && readings.ValueKind == JsonValueKind.Object
            ? readings.EnumerateObject()
            : [];
}
