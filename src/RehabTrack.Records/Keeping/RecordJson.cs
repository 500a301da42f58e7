using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace RehabTrack.Records.Keeping;

/// <summary>How records write JSON: camelCase names, enums by name, absent left out, letters as they are.</summary>
internal static class RecordJson
{
    public static JsonSerializerOptions Options { get; } =
        new(JsonSerializerDefaults.General)
        {
            PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
            DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
            Converters = { new JsonStringEnumConverter() },
        };
}
