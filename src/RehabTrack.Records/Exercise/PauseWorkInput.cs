using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>Days on which the horse does not work.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="HorseId">The horse.</param>
/// <param name="From">The first day.</param>
/// <param name="Until">The last day; null when not known yet.</param>
/// <param name="Words">Why, in words.</param>
/// <param name="OnBehalfOf">For whom somebody of the practice enters it; null when the person enters it.</param>
public sealed record PauseWorkInput(Guid CommandId, Guid HorseId, DateOnly From, DateOnly? Until, string? Words, string? OnBehalfOf = null)
    : ICommand;
