using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>That a person has the permits of some horses before them.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="HorseIds">The horses.</param>
public sealed record NoteLookInput(Guid CommandId, IReadOnlyList<Guid> HorseIds) : ICommand;
