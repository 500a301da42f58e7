using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>What changed in a form as it is being filled in.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="HorseId">The horse.</param>
/// <param name="Form">The form.</param>
/// <param name="Fields">
/// What was typed, by the names of the fields, in the order in which it was typed; null takes a field away. What another device wrote in other
/// fields stays.
/// </param>
/// <param name="IsAfresh">Whether all that was kept before is thrown away first.</param>
public sealed record KeepTypedInput(
    Guid CommandId,
    Guid HorseId,
    TypedForm Form,
    IReadOnlyDictionary<string, string?> Fields,
    bool IsAfresh = false
) : ICommand;
