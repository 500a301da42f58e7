namespace RehabTrack.Records.Reminders;

/// <summary>A reminder that may go out.</summary>
/// <param name="Id">Names it; also names the letter, so that a mail server sees twice as once.</param>
/// <param name="Name">Who it is written to.</param>
/// <param name="Mail">The address.</param>
public sealed record BegunReminder(Guid Id, string Name, string Mail);
