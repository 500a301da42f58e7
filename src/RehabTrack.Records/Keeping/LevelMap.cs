using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Records.Keeping;

/// <summary>Between a level as kept, in cm or as <c>hind-9 2B</c>, and as the heart reads it.</summary>
internal static class LevelMap
{
    public static string? ZoneOf(Level level) => level.Zone is { } zone ? $"{ZoneSchemes.CodeOf(zone.Scheme)} {zone.Name}" : null;

    public static Level Of(double? levelCm, string? zone) =>
        zone?.Split(' ') is [var code, var name] && ZoneSchemes.Find(code) is { } scheme && ZoneSchemes.Find(scheme, name) is { } known
            ? new Level(known)
            : new Level(new Centimetres(levelCm ?? throw new InvalidOperationException($"There is no level {zone}.")));
}
