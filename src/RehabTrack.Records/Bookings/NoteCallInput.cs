using RehabTrack.Records.Room;

namespace RehabTrack.Records.Bookings;

/// <summary>A call to be noted.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="CaseId">The case it was about.</param>
/// <param name="Outcome">What came of it.</param>
/// <param name="PersonId">Who was rung; null when not said.</param>
/// <param name="Words">In free words; a note without a call needs them.</param>
public sealed record NoteCallInput(Guid CommandId, Guid CaseId, CallOutcome Outcome, Guid? PersonId, string? Words) : ICommand;
