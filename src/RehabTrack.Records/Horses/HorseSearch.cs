using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Horses;

/// <summary>What a search for a horse looks into.</summary>
internal static class HorseSearch
{
    public static string Of(string name, string? microchip) =>
        microchip is null ? Folded.Of(name) : $"{Folded.Of(name)} {Folded.Of(microchip)}";
}
