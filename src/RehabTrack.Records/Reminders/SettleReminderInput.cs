using RehabTrack.Records.Room;

namespace RehabTrack.Records.Reminders;

/// <summary>What a mail server answered.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="Id">The reminder.</param>
/// <param name="Trouble">The code of what went wrong; null when the letter was taken.</param>
public sealed record SettleReminderInput(Guid CommandId, Guid Id, string? Trouble) : ICommand;
