using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>A concern to report.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="HorseId">The horse.</param>
/// <param name="Words">What was seen, in the person's words; may be empty, a concern need not be put well to count.</param>
/// <param name="OnBehalfOf">For whom somebody of the practice enters it; null when the person enters it.</param>
public sealed record ReportConcernInput(Guid CommandId, Guid HorseId, string? Words, string? OnBehalfOf = null) : ICommand;
