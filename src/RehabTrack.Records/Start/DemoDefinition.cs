using System.Text.Json;
using System.Text.Json.Serialization;

namespace RehabTrack.Records.Start;

/// <summary>The invented practice of the demo, beside its import files.</summary>
/// <param name="AnchorDate">The date on which the story stands; all of it is shifted so that this is today.</param>
/// <param name="Practice">The practice.</param>
/// <param name="People">Its people; the first vet founds it.</param>
/// <param name="Yards">Its yards.</param>
/// <param name="Horses">Its horses.</param>
/// <param name="Imports">Names of the import files beside it.</param>
/// <param name="Cases">What was signed here of each case.</param>
/// <param name="Desk">What the practice did about rechecks.</param>
public sealed record DemoDefinition(
    DateOnly AnchorDate,
    DemoPractice Practice,
    IReadOnlyList<DemoPerson> People,
    IReadOnlyList<DemoYard> Yards,
    IReadOnlyList<DemoHorse> Horses,
    IReadOnlyList<string> Imports,
    IReadOnlyList<DemoCase> Cases,
    DemoDesk Desk
)
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectRequiredConstructorParameters = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
    };

    /// <summary>Reads <c>practice.json</c>.</summary>
    /// <exception cref="JsonException">It has another shape.</exception>
    public static DemoDefinition Read(Stream stream) =>
        JsonSerializer.Deserialize<DemoDefinition>(stream, Options) ?? throw new JsonException("The demo's definition is empty.");
}
