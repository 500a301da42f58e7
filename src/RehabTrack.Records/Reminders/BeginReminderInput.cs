using RehabTrack.Records.Room;

namespace RehabTrack.Records.Reminders;

/// <summary>A reminder that is about to be mailed.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="CaseId">The case.</param>
/// <param name="PersonId">Who it is written to: trainer or owner of the horse, with a mail address.</param>
/// <param name="Again">Whether it shall go although one went to the same person today.</param>
public sealed record BeginReminderInput(Guid CommandId, Guid CaseId, Guid PersonId, bool Again) : ICommand;
