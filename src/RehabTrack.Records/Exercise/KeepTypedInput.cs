using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>A form as it is being filled in.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="HorseId">The horse.</param>
/// <param name="Form">The form.</param>
/// <param name="Fields">What is typed, by the names of the fields; none throws away what was kept.</param>
public sealed record KeepTypedInput(Guid CommandId, Guid HorseId, TypedForm Form, IReadOnlyDictionary<string, string> Fields) : ICommand;
