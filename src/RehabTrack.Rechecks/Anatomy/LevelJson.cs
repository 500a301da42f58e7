using System.Text.Json;
using System.Text.Json.Serialization;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Anatomy;

/// <summary>A level in JSON: <c>{"value":12.5}</c> on the tape, <c>{"scheme":"hind-9","zone":"2B"}</c> for a zone.</summary>
internal sealed class LevelJson : JsonConverter<Level>
{
    private const string ValueName = "value";
    private const string SchemeName = "scheme";
    private const string ZoneName = "zone";

    public override Level Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        using JsonDocument document = JsonDocument.ParseValue(ref reader);
        JsonElement root = document.RootElement;
        if (!root.TryGetProperty(SchemeName, out JsonElement code))
        {
            return new Level(new Centimetres(root.GetProperty(ValueName).GetDouble()));
        }

        return
            ZoneSchemes.Find(code.GetString() ?? "") is { } scheme
            && ZoneSchemes.Find(scheme, root.GetProperty(ZoneName).GetString() ?? "") is { } zone
            ? new Level(zone)
            : throw new JsonException("There is no such zone.");
    }

    public override void Write(Utf8JsonWriter writer, Level value, JsonSerializerOptions options)
    {
        writer.WriteStartObject();
        if (value.Zone is { } zone)
        {
            writer.WriteString(SchemeName, ZoneSchemes.CodeOf(zone.Scheme));
            writer.WriteString(ZoneName, zone.Name);
        }
        else
        {
            writer.WriteNumber(ValueName, value.Position.Value);
        }

        writer.WriteEndObject();
    }
}
