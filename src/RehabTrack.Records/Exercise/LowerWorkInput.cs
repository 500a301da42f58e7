using RehabTrack.Rechecks.Exercise;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>Days on which less is done than what is permitted.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="HorseId">The horse.</param>
/// <param name="AtMost">The most that may be done on these days.</param>
/// <param name="From">The first day.</param>
/// <param name="Until">The last day; null until a vet signs.</param>
/// <param name="Words">Why, in words; needed.</param>
/// <param name="OnBehalfOf">For whom somebody of the practice enters it; null when the person enters it.</param>
public sealed record LowerWorkInput(
    Guid CommandId,
    Guid HorseId,
    Work AtMost,
    DateOnly From,
    DateOnly? Until,
    string? Words,
    string? OnBehalfOf = null
) : ICommand;
