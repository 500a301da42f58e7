using System.Text.Json;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Records.Practices;

namespace RehabTrack.Records.Keeping;

/// <summary>Where the cvs of a practice come from, as kept.</summary>
internal static class ErrorOrigins
{
    /// <summary>By size. One whose cv is no longer in force is left out: it was changed since.</summary>
    public static IReadOnlyDictionary<MeasuredSize, ErrorOrigin> Of(PracticeRecord practice)
    {
        MeasurementErrorSettings error = SettingsStore.Of(practice).Error;
        return Read(practice)
            .Where(pair => pair.Value.Cv == ErrorCv.Of(error, pair.Key))
            .ToDictionary(pair => pair.Key, pair => pair.Value);
    }

    public static void Set(PracticeRecord practice, MeasuredSize size, ErrorOrigin? origin)
    {
        Dictionary<MeasuredSize, ErrorOrigin> origins = Read(practice);
        origins.Remove(size);
        if (origin is not null)
        {
            origins.Add(size, origin);
        }

        practice.ErrorOriginsJson =
            origins.Count == 0 ? null : JsonSerializer.Serialize(origins.OrderBy(pair => pair.Key).ToDictionary(), RecordJson.Options);
    }

    private static Dictionary<MeasuredSize, ErrorOrigin> Read(PracticeRecord practice) =>
        practice.ErrorOriginsJson is { } json
            ? JsonSerializer.Deserialize<Dictionary<MeasuredSize, ErrorOrigin>>(json, RecordJson.Options)!
            : [];
}
